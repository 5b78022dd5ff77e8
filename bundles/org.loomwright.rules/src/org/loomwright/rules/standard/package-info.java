// SPDX-License-Identifier: EPL-2.0
/** The list of rules that a check runs. A new rule is registered here, and nowhere else. */
package org.loomwright.rules.standard;

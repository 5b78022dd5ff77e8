// SPDX-License-Identifier: EPL-2.0
/** What can be done about a finding: the fixes of rules, and accepting it with a reason. */
package org.loomwright.ide.act;

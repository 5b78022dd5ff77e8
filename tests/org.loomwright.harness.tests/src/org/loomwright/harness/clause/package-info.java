// SPDX-License-Identifier: EPL-2.0
/** Tests of taking lines apart. */
package org.loomwright.harness.clause;

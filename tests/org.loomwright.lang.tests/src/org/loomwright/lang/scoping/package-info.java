// SPDX-License-Identifier: EPL-2.0
/**
 * Tests of names in the editor's resources.
 */
package org.loomwright.lang.scoping;

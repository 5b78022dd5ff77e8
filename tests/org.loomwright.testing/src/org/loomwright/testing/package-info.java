// SPDX-License-Identifier: EPL-2.0
/**
 * What every test module uses beside JUnit. A test that holds a result against a published figure, a standard or
 * another program is tagged {@code outside}; the listener here counts those that passed, so that their number can be
 * reported. Tests of what works with git run the real git through {@link org.loomwright.testing.Git}.
 */
package org.loomwright.testing;

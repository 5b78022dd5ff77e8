// SPDX-License-Identifier: EPL-2.0
/**
 * The application that the install test starts inside an installed product, to learn what really runs there.
 */
package org.loomwright.install.probe;

// SPDX-License-Identifier: EPL-2.0
/**
 * The way of our feature to a user: from the update site, with the installer of the platform, into a product that knows
 * nothing of it.
 */
package org.loomwright.install;

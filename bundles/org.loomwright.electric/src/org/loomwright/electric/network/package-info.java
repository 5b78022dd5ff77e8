// SPDX-License-Identifier: EPL-2.0
/**
 * The electrical network of everything that may be connected in some vehicle: what each wire, contact, switch, fuse,
 * load and source comes to in ohm, volt and ampere. For all vehicles at once; each piece carries its condition.
 */
package org.loomwright.electric.network;

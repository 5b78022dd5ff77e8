// SPDX-License-Identifier: EPL-2.0
/** One vehicle in one mode: which relays pull in, what flows, how warm the wires are, what each lamp gets. */
package org.loomwright.electric.point;

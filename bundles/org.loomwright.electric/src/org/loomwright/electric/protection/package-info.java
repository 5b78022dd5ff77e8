// SPDX-License-Identifier: EPL-2.0
/** Protective devices: what they carry, when they open, how long a wire bears a short, what stands before each wire. */
package org.loomwright.electric.protection;

// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about the way of a harness through the vehicle: is the insulation made for where it lies, do splices lie where
 * the bundle is straight and thin, is each run held often enough, does the bundle pass its openings?
 */
package org.loomwright.rules.routing;

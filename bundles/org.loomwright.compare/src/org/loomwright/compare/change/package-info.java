// SPDX-License-Identifier: EPL-2.0
/**
 * What is different between two sides: changes as a reviewer would tell them, each with the facts that it replaces and
 * the vehicles that feel it. Applied to the old side they give the new one.
 */
package org.loomwright.compare.change;

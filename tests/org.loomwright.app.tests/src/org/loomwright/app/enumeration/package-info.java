// SPDX-License-Identifier: EPL-2.0
/**
 * What the rules say about all vehicles at once, held against every vehicle on its own: random projects, an enumeration
 * of their vehicles that asks no diagram, and the project of one vehicle with every condition decided.
 */
package org.loomwright.app.enumeration;

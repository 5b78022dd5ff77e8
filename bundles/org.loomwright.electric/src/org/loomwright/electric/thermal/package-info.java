// SPDX-License-Identifier: EPL-2.0
/** What wires may carry and how warm they get: ambient, insulation, neighbours that carry current in a mode. */
package org.loomwright.electric.thermal;

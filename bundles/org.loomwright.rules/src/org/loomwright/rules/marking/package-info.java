// SPDX-License-Identifier: EPL-2.0
/** Rules about what tells one wire from another: its colour and its print legend. */
package org.loomwright.rules.marking;

// SPDX-License-Identifier: EPL-2.0
/** Rules about the two halves of a connection: are they both there, do they go together, and do their cavities meet? */
package org.loomwright.rules.mating;

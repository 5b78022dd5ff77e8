// SPDX-License-Identifier: EPL-2.0
/**
 * The parser around the generated one: it reads line by line, recovers within the line, and says in words of the trade
 * what a line lacks.
 */
package org.loomwright.lang.parser;

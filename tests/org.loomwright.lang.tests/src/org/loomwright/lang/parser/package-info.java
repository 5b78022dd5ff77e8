// SPDX-License-Identifier: EPL-2.0
/** Tests of the parser alone. */
package org.loomwright.lang.parser;

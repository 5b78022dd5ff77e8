// SPDX-License-Identifier: EPL-2.0
/**
 * The command line: reads arguments, calls a use case, prints what came of it and ends with its exit code. A plain Java
 * main class; no logic of its own.
 */
package org.loomwright.cli;

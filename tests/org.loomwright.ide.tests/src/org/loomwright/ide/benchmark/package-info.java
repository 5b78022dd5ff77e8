// SPDX-License-Identifier: EPL-2.0
/** Prints how long a person waits while typing. No test; clocks decide nothing here. */
package org.loomwright.ide.benchmark;

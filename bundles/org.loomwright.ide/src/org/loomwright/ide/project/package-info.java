// SPDX-License-Identifier: EPL-2.0
/** One project at one moment: the joined sources, what was found, and what all services read off them. */
package org.loomwright.ide.project;

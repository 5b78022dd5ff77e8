// SPDX-License-Identifier: EPL-2.0
/** The smallest gauge of each wire and the fuse that would do in every vehicle and mode. */
package org.loomwright.electric.sizing;

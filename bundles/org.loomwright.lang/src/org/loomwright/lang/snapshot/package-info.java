// SPDX-License-Identifier: EPL-2.0
/**
 * From the tree of one file to the records of the snapshot: copies names, quantities, conditions and spans out of the
 * tree, so that it can be dropped. No name is looked up here, and no other file is read.
 */
package org.loomwright.lang.snapshot;

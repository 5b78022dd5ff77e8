// SPDX-License-Identifier: EPL-2.0
/**
 * One way in for all sources: a file, a blob of a revision and an editor's buffer are each a name and bytes. Files of a
 * folder are found in an order that does not depend on the machine, and are read by several threads.
 */
package org.loomwright.app.load;

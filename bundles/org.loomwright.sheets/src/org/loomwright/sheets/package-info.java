// SPDX-License-Identifier: EPL-2.0
/**
 * The documents that bench and installer hold in their hands, as files in memory. Content is read off the snapshot,
 * composed into documents, laid out on pages and written; each stage is a package.
 */
package org.loomwright.sheets;

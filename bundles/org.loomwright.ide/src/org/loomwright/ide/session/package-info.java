// SPDX-License-Identifier: EPL-2.0
/**
 * Keeps projects in memory while somebody edits them: files on disk, unsaved texts over them, findings as they come.
 * All changes go through one queue; a change cancels what is being read or checked.
 */
package org.loomwright.ide.session;

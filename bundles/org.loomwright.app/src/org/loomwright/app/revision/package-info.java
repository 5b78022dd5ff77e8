// SPDX-License-Identifier: EPL-2.0
/**
 * Sources as they were at a revision of git, read without touching the work tree. Nothing outside of this package knows
 * the library that reads git, and no class of it is loaded until somebody asks for a revision.
 */
package org.loomwright.app.revision;

// SPDX-License-Identifier: EPL-2.0
/** Tests of revisions, on repositories that the real git makes. */
package org.loomwright.app.revision;

// SPDX-License-Identifier: EPL-2.0
/** What a word of a source names: which thing, declared where. */
package org.loomwright.ide.names;

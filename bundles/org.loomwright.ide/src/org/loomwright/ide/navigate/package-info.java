// SPDX-License-Identifier: EPL-2.0
/** From a word to what it names and back: definition, references, occurrences, rename, search by name. */
package org.loomwright.ide.navigate;

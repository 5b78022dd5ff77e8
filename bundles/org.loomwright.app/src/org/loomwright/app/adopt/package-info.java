// SPDX-License-Identifier: EPL-2.0
/** Takes single changes of a comparison over from one side to the other, as text edits. */
package org.loomwright.app.adopt;

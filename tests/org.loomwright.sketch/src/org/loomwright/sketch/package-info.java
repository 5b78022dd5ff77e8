// SPDX-License-Identifier: EPL-2.0
/** Projects put together by tests without source text, for the rooms that know nothing of the language. */
package org.loomwright.sketch;

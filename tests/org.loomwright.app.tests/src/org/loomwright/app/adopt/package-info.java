// SPDX-License-Identifier: EPL-2.0
/** Changes taken over one by one. */
package org.loomwright.app.adopt;

// SPDX-License-Identifier: EPL-2.0
/** Tests of merging on sources as people write them. */
package org.loomwright.app.merge;

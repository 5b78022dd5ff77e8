// SPDX-License-Identifier: EPL-2.0
/** Tests of the strip. */
package org.loomwright.geometry.strip;

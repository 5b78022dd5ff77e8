// SPDX-License-Identifier: EPL-2.0
/** Tests of drawings side by side. */
package org.loomwright.compare.matrix;

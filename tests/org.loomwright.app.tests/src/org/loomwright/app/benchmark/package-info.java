// SPDX-License-Identifier: EPL-2.0
/** Times of loading and checking a large invented project, beside something outside that is timed in the same run. */
package org.loomwright.app.benchmark;

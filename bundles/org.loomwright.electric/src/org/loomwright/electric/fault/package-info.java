// SPDX-License-Identifier: EPL-2.0
/** What happens to a vehicle in a mode when something fails: a short circuit, a lost ground or fuse, a bad contact. */
package org.loomwright.electric.fault;

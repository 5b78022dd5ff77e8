// SPDX-License-Identifier: EPL-2.0
/**
 * The validator that Xtext asks for. What is wrong with sources is found on the snapshot.
 */
package org.loomwright.lang.validation;

// SPDX-License-Identifier: EPL-2.0
/**
 * The language inside Equinox, where class loaders are strict and the extension registry tells EMF of the metamodel.
 */
package org.loomwright.lang.osgi;

// SPDX-License-Identifier: EPL-2.0
/**
 * Sources as EMF resources, for the editor.
 */
package org.loomwright.lang.resource;

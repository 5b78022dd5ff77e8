// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.validation;

/**
 * Adds nothing: problems of the text come with its reading, problems of names with linking, findings from the rules.
 */
public class LoomValidator extends AbstractLoomValidator {
}

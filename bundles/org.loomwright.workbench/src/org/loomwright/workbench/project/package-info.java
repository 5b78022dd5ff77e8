// SPDX-License-Identifier: EPL-2.0
/** Projects: their nature, the builder that marks findings, and the wizards that make them. */
package org.loomwright.workbench.project;

// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

/**
 * The call cannot be carried out: a path that is not there, a folder that cannot be written, a name that the project
 * does not have. The message is one line for people that says why and where. What stands in a source is never reported
 * like this; that is a finding.
 */
public final class BadCall extends Exception {

    private static final long serialVersionUID = 1L;

    public BadCall(String message) {
        super(message);
    }
}

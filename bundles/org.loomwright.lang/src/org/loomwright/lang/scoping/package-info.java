// SPDX-License-Identifier: EPL-2.0
/**
 * What a name may refer to where it stands, for the editor: completion, navigation, renaming. The snapshot does not
 * need it; there names are looked up by the harness room.
 */
package org.loomwright.lang.scoping;

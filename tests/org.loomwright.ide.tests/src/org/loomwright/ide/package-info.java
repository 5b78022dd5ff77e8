// SPDX-License-Identifier: EPL-2.0
/** Tests of the language services, on the Orrin, on broken examples and on texts put together for one case. */
package org.loomwright.ide;

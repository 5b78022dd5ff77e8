// SPDX-License-Identifier: EPL-2.0
/**
 * The electrical connections of a platform with one choice of harnesses fitted: which points are joined by what, and in
 * which vehicles. Built once and shared by all rules that follow a path; every question about all vehicles is a
 * fixpoint over conditions.
 */
package org.loomwright.electric.connection;

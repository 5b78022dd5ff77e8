// SPDX-License-Identifier: EPL-2.0
/**
 * Conditions on vehicles: what can be chosen about a vehicle of a platform (model year, body, options, upgrades, and
 * what excludes what), and boolean functions over these choices that are exact for every vehicle that can exist,
 * however many there are. {@link org.loomwright.condition.Choices} describes, {@link org.loomwright.condition.Vehicles}
 * resolves what a person wrote into a {@link org.loomwright.condition.Condition}, and a condition counts its vehicles
 * and says in the fewest words which ones they are.
 */
package org.loomwright.condition;

package org.capwright.lay;

import java.util.Map;
import org.capwright.pattern.Material;

/**
 * Cloth to buy.
 *
 * @param pairs pairs of sleeves per size, in the order of the run
 * @param material the material
 * @param pieces how many whole pieces are cut
 * @param area of all pieces that are cut, whole, along their cut lines, mm²
 * @param lay how they are laid; {@link Lay#purchase()} tells what to buy
 */
public record MaterialNeed(Map<String, Integer> pairs, Material material, int pieces, double area, Lay lay) {}

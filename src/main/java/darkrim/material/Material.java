package darkrim.material;

/**
 * What a part is made of.
 *
 * @param name its name
 * @param contraction how it contracts
 * @param source where the numbers come from
 */
public record Material(String name, Contraction contraction, String source) {}

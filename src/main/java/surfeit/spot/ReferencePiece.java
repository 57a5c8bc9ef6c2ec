package surfeit.spot;

import surfeit.composition.Nominal;

/**
 * The piece of known composition a reference spot was measured on.
 *
 * @param trueComposition its certified composition; a tolerance is the certificate's
 * @param sameMaterial    true where the piece is the very alloy the particles came from
 */
public record ReferencePiece(Nominal trueComposition, boolean sameMaterial) {
}

package surfeit.report;

import surfeit.segregation.answer.SkinLimit;

/** How thick a skin over a whole particle could be, in words. */
final class SkinSentence {
    private SkinSentence() {
    }

    static String of(SkinLimit limit) {
        String most = Digits.lengthOfNm(limit.mostNm());
        if (limit.cannotCoverParticle()) {
            return "Spots read to a depth of " + Digits.lengthOfNm(limit.sampledDepthNm().orElseThrow())
                + ", but a skin of "
                + "this composition over the whole particle could be at most " + most
                + " thick, since it cannot hold more "
                + limit.element() + " than the particle: it is a patch, or the skin is richer than it reads.";
        }
        return "A skin of this composition over the whole particle could be at most " + most + " thick ("
            + Digits.lengthOfNm(limit.thicknessNm()) + " at the mean): it cannot hold more " + limit.element()
            + " than the particle.";
    }
}

package surfeit.segregation.blocks;

import java.util.Optional;
import surfeit.segregation.answer.GroupBy;
import surfeit.segregation.answer.MethodSettings;
import surfeit.segregation.sums.SpotInHand;
import surfeit.segregation.sums.SumsIn;
import surfeit.segregation.sums.SumsOut;
import surfeit.spot.Sample;

/** The inputs that sums are made from: they stand in front of every sum that is kept. */
record SumsInputs(SpotInHand hand, GroupBy by, int placesInBlock) {
    /** Grows when the sums are written in another order or hold something else. */
    private static final long FORM = 5;

    void writeTo(SumsOut out) {
        Sample sample = hand.sample();
        out.count("form", FORM);
        out.count("version of the method", MethodSettings.VERSION);
        out.count("places in a block", placesInBlock);
        out.text("grouped by", by.word());
        out.text("spot centre", sample.judgement().spotCentre().name());
        out.real("default limit", hand.defaultLimit());
        out.yesOrNo("spots are independent", sample.spotsIndependent());
        out.optionalReal("beam energy", beamEnergy());
        out.elements(sample.excludedElements());
        out.elements(hand.nominal().elements());
    }

    /** @throws SumsIn.UnfitException where the inputs were others, or the program wrote sums in another form */
    void require(SumsIn in) {
        Sample sample = hand.sample();
        in.require("form", FORM);
        in.require("version of the method", MethodSettings.VERSION);
        in.require("places in a block", (long) placesInBlock);
        in.require("grouped by", by.word());
        in.require("spot centre", sample.judgement().spotCentre().name());
        in.require("default limit", hand.defaultLimit());
        in.require("spots are independent", sample.spotsIndependent());
        if (!in.optionalReal().equals(beamEnergy())) {
            throw new SumsIn.UnfitException("beam energy");
        }
        in.requireElements(sample.excludedElements());
        in.requireElements(hand.nominal().elements());
    }

    private Optional<Double> beamEnergy() {
        return hand.sample().geometry().beamEnergyKev().stream().boxed().findFirst();
    }
}

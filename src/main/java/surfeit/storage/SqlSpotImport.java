package surfeit.storage;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import surfeit.lab.ImportReport;
import surfeit.lab.KeptFile;
import surfeit.lab.Occasion;
import surfeit.lab.PublicId;
import surfeit.lab.SampleRevision;
import surfeit.lab.SpotImportAccess;
import surfeit.lab.StoredSample;
import surfeit.spot.Spot;

/**
 * One import while it is written, many spots at a time.
 *
 * <p>The row of the import comes with the first thing recorded, so that an upload with nothing new leaves no trace.
 * Bound to one transaction; not thread-safe.
 */
final class SqlSpotImport implements SpotImportAccess {
    private final SqlImports imports;
    private final SqlSamples samples;
    private final ContentDigest content;
    private final WriteMemory memory;
    private final StoredSample sample;
    private final Occasion occasion;
    private final long sampleNumber;
    private final long number;
    private final long firstSpot;
    private long nextSpot;
    private long lastSpot;
    private boolean begun;
    private final int[] parts = new int[KeptFile.Kind.values().length];
    private final SpotLots lots;

    SqlSpotImport(Handle handle, Engine engine, long sampleNumber, SqlSamples samples, SqlImports imports,
                  ContentDigest content, WriteMemory memory, StoredSample sample, Occasion occasion) {
        this.imports = imports;
        this.content = content;
        this.memory = memory;
        this.samples = samples;
        this.sample = sample;
        this.occasion = occasion;
        this.sampleNumber = sampleNumber;
        this.number = memory.lastImport(imports::lastNumber) + 1;
        this.firstSpot = memory.lastSpot(() -> PlainSql.number(handle, "SELECT coalesce(max(id), 0) FROM spot")) + 1;
        this.nextSpot = firstSpot;
        this.lastSpot = firstSpot - 1;
        this.lots = engine.spotLots(handle, sampleNumber, number, sample.revision() + 1);
    }

    @Override
    public List<Optional<Recorded>> add(List<Spot> spots) {
        try {
            if (!begun) {
                List<Optional<Recorded>> known = find(spots);
                if (known.stream().allMatch(Optional::isPresent)) {
                    return known;
                }
                begin();
                if (known.stream().noneMatch(Optional::isPresent) && differ(spots)) {
                    recordNew(spots);
                    return known;
                }
            }
            boolean[] isNew = record(spots);
            List<Spot> others = new ArrayList<>();
            for (int i = 0; i < isNew.length; i++) {
                if (!isNew[i]) {
                    others.add(spots.get(i));
                }
            }
            Iterator<Optional<Recorded>> known = find(others).iterator();
            List<Optional<Recorded>> found = new ArrayList<>(spots.size());
            for (boolean one : isNew) {
                found.add(one ? Optional.empty() : known.next());
            }
            return found;
        } catch (SQLException e) {
            throw new EngineFailure(e);
        }
    }

    @Override
    public long nextSpot() {
        return nextSpot;
    }

    private static boolean differ(List<Spot> spots) {
        return spots.size() == 1 || spots.stream().map(Spot::key).distinct().count() == spots.size();
    }

    private void recordNew(List<Spot> spots) throws SQLException {
        List<byte[]> payloads = spots.stream().map(SpotCodec::encode).toList();
        lots.recordNew(nextSpot, spots, payloads);
        for (int i = 0; i < spots.size(); i++) {
            addContent(nextSpot + i, spots.get(i), payloads.get(i));
        }
        nextSpot += spots.size();
    }

    private boolean[] record(List<Spot> spots) throws SQLException {
        List<byte[]> payloads = spots.stream().map(SpotCodec::encode).toList();
        boolean[] isNew = lots.record(nextSpot, spots, payloads);
        for (int i = 0; i < isNew.length; i++) {
            if (isNew[i]) {
                addContent(nextSpot + i, spots.get(i), payloads.get(i));
            }
        }
        nextSpot += spots.size();
        return isNew;
    }

    private void addContent(long spotNumber, Spot spot, byte[] payload) {
        content.key(spot.session().orElse(""), spot.label(), AcquiredTime.of(spot.key().acquired()));
        content.group(spot.isReference(), spot.feature(), spot.particle());
        content.spot(spotNumber, 1, false, Optional.empty(), payload);
        memory.recorded(place(spot));
        lastSpot = spotNumber;
    }

    private List<Optional<Recorded>> find(List<Spot> spots) throws SQLException {
        if (spots.isEmpty()) {
            return List.of();
        }
        List<Optional<SpotLots.Found>> lookedUp = spots.stream().map(this::place).map(memory::lookedUp)
            .flatMap(Optional::stream).toList();
        List<Optional<SpotLots.Found>> found = lookedUp.size() == spots.size() ? lookedUp : lots.find(spots);
        return found.stream().map(one -> one.map(this::recorded)).toList();
    }

    private SpotLots.Place place(Spot spot) {
        return new SpotLots.Place(sampleNumber, spot.key());
    }

    private Recorded recorded(SpotLots.Found found) {
        return new Recorded(PublicId.of(PublicId.SPOT, found.number()), SpotCodec.decode(found.payload()),
            found.withdrawn(), found.number() >= firstSpot);
    }

    @Override
    public void appendFile(KeptFile.Kind kind, byte[] bytes, int length) {
        begin();
        imports.addFilePart(number, kind, parts[kind.ordinal()]++, Arrays.copyOf(bytes, length));
    }

    private void begin() {
        if (!begun) {
            imports.begin(number, sampleNumber, sample.revision(), occasion);
            memory.lastImport(number);
            begun = true;
        }
    }

    @Override
    public String id() {
        return PublicId.of(PublicId.IMPORT, number);
    }

    @Override
    public void finish(ImportReport report) {
        begin();
        imports.complete(number, report);
        memory.lastSpot(lastSpot);
        if (report.acceptedCount() > 0) {
            long spotCount = sample.spotCount() + report.acceptedCount();
            samples.addRevision(sampleNumber, sample, SampleRevision.What.SPOTS_IMPORTED, occasion, id(), spotCount);
            memory.of(sample.name()).changed(new StoredSample(sample.name(), sample.revision() + 1, sample.sample(),
                sample.described(), spotCount, sample.created(), occasion.when()));
        }
    }
}

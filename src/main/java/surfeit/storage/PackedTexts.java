package surfeit.storage;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Texts under names, in the order of the names, as bytes of the record. */
final class PackedTexts {
    private PackedTexts() {
    }

    static byte[] of(Map<String, String> texts) {
        PackedWriter out = new PackedWriter().count(texts.size());
        new TreeMap<>(texts).forEach((name, text) -> out.text(name).text(text));
        return out.toBytes();
    }

    static SortedMap<String, String> read(byte[] bytes) {
        PackedReader in = new PackedReader(bytes);
        SortedMap<String, String> texts = new TreeMap<>();
        for (long left = in.count(); left > 0; left--) {
            texts.put(in.text(), in.text());
        }
        return texts;
    }
}

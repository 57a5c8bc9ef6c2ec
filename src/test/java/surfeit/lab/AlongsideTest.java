package surfeit.lab;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import surfeit.spot.Sample;
import surfeit.spot.Spot;

class AlongsideTest {
    private final List<Object> taken = new ArrayList<>();

    private static Consumer<Consumer<Integer>> count(int upTo) {
        return taker -> {
            for (int i = 0; i < upTo; i++) {
                taker.accept(i);
            }
        };
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 1023, 1024, 1025, 2048, 100_000})
    void all_that_is_made_is_taken_in_its_order(int things) {
        Alongside.run("maker", count(things), taken::add);

        List<Object> expected = new ArrayList<>();
        count(things).accept(expected::add);
        assertThat(taken).isEqualTo(expected);
    }

    @Test
    void another_thread_makes_and_the_one_that_asks_takes() {
        AtomicReference<String> maker = new AtomicReference<>("");
        Alongside.run("maker", taker -> {
            maker.set(Thread.currentThread().getName());
            taker.accept(1);
        }, thing -> taken.add(Thread.currentThread()));

        assertThat(maker).hasValue("maker");
        assertThat(taken).containsExactly(Thread.currentThread());
    }

    @Test
    void the_maker_waits_where_it_is_some_lots_ahead() {
        AtomicInteger made = new AtomicInteger();
        AtomicInteger furthest = new AtomicInteger();
        Alongside.<Integer>run("maker", taker -> count(100_000).accept(thing -> {
            made.incrementAndGet();
            taker.accept(thing);
        }), thing -> furthest.accumulateAndGet(made.get() - thing, Math::max));

        assertThat(furthest).hasValueBetween(1, 6 * 1024 + 1);
    }

    @Test
    void a_failure_of_the_maker_comes_after_what_it_made() {
        assertThatThrownBy(() -> Alongside.<Integer>run("maker", taker -> {
            count(1100).accept(taker);
            throw new IllegalStateException("no more");
        }, taken::add)).isInstanceOf(IllegalStateException.class).hasMessage("no more");
        assertThat(taken).hasSize(1100);

        assertThatThrownBy(() -> Alongside.<Integer>run("maker", taker -> {
            throw new AssertionError("wrong");
        }, taken::add)).isInstanceOf(AssertionError.class).hasMessage("wrong");
    }

    @Test
    void a_failure_of_the_taker_ends_the_maker_too() {
        AtomicReference<Thread> maker = new AtomicReference<>();
        assertThatThrownBy(() -> Alongside.<Integer>run("maker", taker -> {
            maker.set(Thread.currentThread());
            while (true) {
                taker.accept(1);
            }
        }, thing -> {
            throw new IllegalStateException("full");
        })).isInstanceOf(IllegalStateException.class).hasMessage("full");
        assertThat(maker.get()).satisfies(thread -> {
            thread.join();
            assertThat(thread.isAlive()).isFalse();
        });
    }

    /** Notes what it hears; fails at a row that is left out. */
    private final class Heard extends FoundRows {
        private final boolean fails;

        Heard(boolean fails) {
            this.fails = fails;
        }

        @Override
        void keep(Consumer<SpotRows.Sink> found) {
            taken.add("found");
        }

        @Override
        public void leftOut(LeftOut what) {
            taken.add("left out");
            if (fails) {
                throw new IllegalStateException("the disk is full");
            }
        }

        @Override
        public void spot(Spot spot, SpotRows.Row row) {
            throw new AssertionError("there is no spot");
        }
    }

    private void read(SpotRows rows, boolean fails) throws IOException {
        new RowsAlong(rows).read(new Upload() {
            @Override
            public ByteArrayInputStream open() {
                return new ByteArrayInputStream(new byte[0]);
            }

            @Override
            public String mediaType() {
                return "text/csv";
            }

            @Override
            public Optional<String> fileName() {
                return Optional.empty();
            }
        }, Sample.of(Optional.of("ag-cu-eutectic"), Optional.empty()), new Heard(fails));
    }

    @Test
    void a_refusal_of_an_upload_is_heard_after_its_rows_and_as_it_was() {
        ProblemException refusal = new ProblemException(Problem.UNREADABLE_TABLE, "a second header");
        IOException lost = new IOException("the file is gone");
        LeftOut what = new LeftOut(Place.WHOLE, "a mean", Optional.empty());
        assertThatThrownBy(() -> read((upload, sample, sink) -> {
            sink.rejectedHeader("label");
            sink.leftOut(what);
            throw refusal;
        }, false)).isSameAs(refusal);
        assertThat(taken).containsExactly("found", "left out");

        assertThatThrownBy(() -> read((upload, sample, sink) -> {
            throw lost;
        }, false)).isSameAs(lost);
        assertThatThrownBy(() -> read((upload, sample, sink) -> sink.leftOut(what), true))
            .isInstanceOf(IllegalStateException.class).hasMessage("the disk is full");
    }
}

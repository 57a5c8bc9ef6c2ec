package surfeit.http.measure;

import com.sun.management.OperatingSystemMXBean;
import com.sun.management.UnixOperatingSystemMXBean;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryMXBean;
import java.lang.management.MemoryUsage;
import java.util.List;

/** The Java machine the service runs on: memory, threads, collections, processor time. */
final class VirtualMachine {
    private static final double MILLIS = 1e3;
    private static final double NANOS = 1e9;

    private VirtualMachine() {
    }

    static void write(MetricsText text) {
        MemoryMXBean memory = ManagementFactory.getMemoryMXBean();
        memory(text, "jvm_memory_used_bytes", "Memory in use.", memory.getHeapMemoryUsage().getUsed(),
            memory.getNonHeapMemoryUsage().getUsed());
        memory(text, "jvm_memory_committed_bytes", "Memory taken from the machine.",
            memory.getHeapMemoryUsage().getCommitted(), memory.getNonHeapMemoryUsage().getCommitted());
        MemoryUsage heap = memory.getHeapMemoryUsage();
        text.single("jvm_memory_heap_max_bytes", MetricsText.Type.GAUGE, "Most memory the heap may take.",
            heap.getMax());
        text.single("jvm_threads", MetricsText.Type.GAUGE, "Threads that live.",
            ManagementFactory.getThreadMXBean().getThreadCount());
        collections(text);
        text.single("process_start_time_seconds", MetricsText.Type.GAUGE, "When the program started, since 1970 UTC.",
            ManagementFactory.getRuntimeMXBean().getStartTime() / MILLIS);
        if (ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean system) {
            text.single("process_cpu_seconds_total", MetricsText.Type.COUNTER, "Processor time taken.",
                system.getProcessCpuTime() / NANOS);
        }
        if (ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean system) {
            text.single("process_open_fds", MetricsText.Type.GAUGE, "Open files and connections.",
                system.getOpenFileDescriptorCount());
        }
    }

    private static void memory(MetricsText text, String name, String help, long heap, long nonHeap) {
        text.family(name, MetricsText.Type.GAUGE, help).sample(name, heap, "area", "heap")
            .sample(name, nonHeap, "area", "nonheap");
    }

    private static void collections(MetricsText text) {
        List<GarbageCollectorMXBean> all = ManagementFactory.getGarbageCollectorMXBeans();
        text.family("jvm_gc_collections_total", MetricsText.Type.COUNTER, "Garbage collections.");
        all.forEach(each -> text.sample("jvm_gc_collections_total", Math.max(0, each.getCollectionCount()), "gc",
            each.getName()));
        text.family("jvm_gc_collection_seconds_total", MetricsText.Type.COUNTER, "Time taken by garbage collections.");
        all.forEach(each -> text.sample("jvm_gc_collection_seconds_total",
            Math.max(0, each.getCollectionTime()) / MILLIS,
            "gc", each.getName()));
    }
}

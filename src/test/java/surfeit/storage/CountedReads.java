package surfeit.storage;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import surfeit.lab.ReadAccess;
import surfeit.lab.Store;

/** A real store that counts the spots read from it in lists. */
final class CountedReads {
    private final Store store;
    private final AtomicLong spots = new AtomicLong();

    CountedReads(Store store) {
        this.store = store;
    }

    /** The store to be used; reads go through the count. */
    Store counted() {
        return (Store) Proxy.newProxyInstance(Store.class.getClassLoader(), new Class<?>[] {Store.class},
            (proxy, method, arguments) -> {
                if (!method.getName().equals("read")) {
                    return call(store, method, arguments);
                }
                @SuppressWarnings("unchecked")
                Function<ReadAccess, Object> work = (Function<ReadAccess, Object>) arguments[0];
                return store.read(access -> work.apply(counted(access)));
            });
    }

    private ReadAccess counted(ReadAccess access) {
        return (ReadAccess) Proxy.newProxyInstance(Store.class.getClassLoader(), new Class<?>[] {ReadAccess.class},
            (proxy, method, arguments) -> {
                Object result = call(access, method, arguments);
                if (method.getName().equals("spots")) {
                    spots.addAndGet(((List<?>) result).size());
                }
                return result;
            });
    }

    private static Object call(Object target, Method method, Object[] arguments) throws Throwable {
        try {
            return method.invoke(target, arguments);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    /** Spots read since this was asked last. */
    long take() {
        return spots.getAndSet(0);
    }
}

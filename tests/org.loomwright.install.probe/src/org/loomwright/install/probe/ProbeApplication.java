// SPDX-License-Identifier: EPL-2.0
package org.loomwright.install.probe;

import java.io.PrintStream;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.wiring.FrameworkWiring;

/**
 * Prints one line a bundle: {@code bundle NAME VERSION STATE}; then loads the classes named as arguments, each
 * {@code bundle/class}, and prints {@code loaded} or {@code missing} for it.
 */
public final class ProbeApplication implements IApplication {

    @Override
    public Object start(IApplicationContext context) throws BundleException {
        Bundle own = FrameworkUtil.getBundle(ProbeApplication.class);
        own.start();
        BundleContext bundles = own.getBundleContext();
        bundles.getBundle(0).adapt(FrameworkWiring.class).resolveBundles(null);
        PrintStream out = System.out;
        Stream.of(bundles.getBundles())
                .sorted(Comparator.comparing(Bundle::getSymbolicName))
                .forEach(b -> out.println("bundle " + b.getSymbolicName() + " " + b.getVersion() + " " + state(b)));
        Object arguments = context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        for (String argument : arguments instanceof String[] given ? List.of(given) : List.<String>of()) {
            if (argument.contains("/")) {
                out.println(load(bundles, argument) + " " + argument);
            }
        }
        return IApplication.EXIT_OK;
    }

    @Override
    public void stop() {
        // nothing runs after start has returned
    }

    private static String state(Bundle bundle) {
        return switch (bundle.getState()) {
            case Bundle.INSTALLED -> "installed";
            case Bundle.RESOLVED -> "resolved";
            case Bundle.STARTING -> "starting";
            case Bundle.ACTIVE -> "active";
            default -> "other";
        };
    }

    private static String load(BundleContext bundles, String wanted) {
        int slash = wanted.indexOf('/');
        String name = wanted.substring(0, slash);
        for (Bundle bundle : bundles.getBundles()) {
            if (name.equals(bundle.getSymbolicName())) {
                try {
                    bundle.loadClass(wanted.substring(slash + 1));
                    return "loaded";
                } catch (ClassNotFoundException | LinkageError e) {
                    return "missing";
                }
            }
        }
        return "missing";
    }
}

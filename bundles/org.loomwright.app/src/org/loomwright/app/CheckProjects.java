// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Settings;

/** Checks several projects beside each other. One that cannot be checked does not stop the others. */
public final class CheckProjects {

    private final CheckProject check;
    private final int threads;

    /**
     * @param check   checks one
     * @param threads the most threads to use, at least 1; the outcome does not depend on it
     */
    public CheckProjects(CheckProject check, int threads) {
        this.check = check;
        this.threads = threads;
    }

    /**
     * What came of one project.
     *
     * @param place   where it is
     * @param checked the project after the check; empty when it could not be checked
     * @param refusal why it could not be checked, one line; else empty
     */
    public record Outcome(ProjectPlace place, Optional<Checked> checked, String refusal) {
    }

    /** Checks the projects; the outcomes are in the order of the places. */
    public List<Outcome> check(List<ProjectPlace> places, Settings settings, Cancel cancel, Progress progress) {
        if (places.size() == 1) {
            return List.of(outcome(places.getFirst(), settings, threads, cancel, progress));
        }
        int workers = Math.min(threads, places.size());
        List<Outcome> outcomes = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(workers)) {
            List<Future<Outcome>> running = new ArrayList<>();
            for (ProjectPlace place : places) {
                Progress named = (what, done, total) -> progress.report(place.name() + ": " + what, done, total);
                running.add(pool.submit(
                        () -> outcome(place, settings, Math.max(1, threads / workers), cancel, named)));
            }
            for (Future<Outcome> each : running) {
                outcomes.add(each.get());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while checking", e);
        } catch (ExecutionException e) {
            switch (e.getCause()) {
                case RuntimeException ours -> throw ours;
                case Error ours -> throw ours;
                default -> throw new IllegalStateException(e.getCause());
            }
        }
        return outcomes;
    }

    private Outcome outcome(ProjectPlace place, Settings settings, int readers, Cancel cancel, Progress progress) {
        try {
            return new Outcome(place, Optional.of(check.check(place, settings, readers, cancel, progress)), "");
        } catch (BadCall | TooManyCombinations e) {
            return new Outcome(place, Optional.empty(), e.getMessage());
        }
    }
}

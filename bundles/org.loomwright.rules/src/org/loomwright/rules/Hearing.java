// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import org.loomwright.harness.link.Project;

/** Which questions of one check had no answer, from before or now. Safe for use by several threads. */
final class Hearing {

    private final Prints prints;
    private final Silences before;
    private final Map<String, Silence> silences = new ConcurrentSkipListMap<>();

    Hearing(Prints prints, Silences before) {
        this.prints = prints;
        this.before = before;
    }

    /** The answer to a question, if it is known that there is nothing to say and all that this rests on is the same. */
    Optional<Found.Answer> known(String question, List<Object> inputs, Project project) {
        Optional<Silence> same = before.find(question).filter(silence -> silence.print().equals(
                prints.of(question, inputs, silence.read(), silence.everything())));
        return same.map(silence -> {
            silences.put(question, silence);
            Reads reads = new Reads();
            silence.read().forEach(name -> reads.wiring(name, project.wiring(name)));
            if (silence.everything()) {
                reads.everything();
            }
            return new Found.Answer(reads, Outcome.silent(silence));
        });
    }

    /** Notes what came of a question. */
    void heard(String question, List<Object> inputs, Found.Answer answer) {
        if (answer.outcome().isSilent()) {
            Reads reads = answer.reads();
            silences.put(question, new Silence(question, reads.names(), reads.isEverything(),
                    prints.of(question, inputs, reads.names(), reads.isEverything()), answer.outcome().targets(),
                    answer.outcome().checks()));
        }
    }

    /** All questions without an answer, in order of their names. */
    List<Silence> silences() {
        return List.copyOf(silences.values());
    }
}

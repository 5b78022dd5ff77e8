// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

/** How pages look, on screen and on paper. */
final class PageStyle {

    /** That of a comparison. */
    static final String OF_COMPARISON = """
            :root { color-scheme: light dark; --line: #8a8f98; --head: #e8ebef; --back: #ffffff; --ink: #16191d;
              --mark: #a3260f; --good: #1d5c2e; --link: #0b4f9c; }
            @media (prefers-color-scheme: dark) { :root { --line: #6b717b; --head: #2a2f37; --back: #16191d;
              --ink: #e8ebef; --mark: #ff9b85; --good: #8fd6a3; --link: #8cc2ff; } }
            body { margin: 1.5rem; font: 0.95rem/1.45 system-ui, sans-serif; color: var(--ink);
              background: var(--back); }
            a { color: var(--link); }
            .skip { position: absolute; left: -100rem; }
            .skip:focus { position: static; }
            :focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
            .verdict { font-size: 1.1rem; font-weight: 600; }
            .wide { overflow-x: auto; margin: 0 0 1.5rem; }
            table { border-collapse: collapse; }
            caption, figcaption { text-align: left; font-weight: 600; padding: 0.4rem 0; }
            figcaption { font-weight: 400; }
            th, td { border: 1px solid var(--line); padding: 0.2rem 0.6rem; text-align: left; vertical-align: top;
              font-variant-numeric: tabular-nums; }
            thead th { background: var(--head); }
            tbody th { font-weight: 400; }
            tr:target { outline: 3px solid var(--link); }
            tr.worse td:first-child { color: var(--mark); font-weight: 600; }
            tr.better td:first-child { color: var(--good); }
            svg text { font: 12px system-ui, sans-serif; fill: var(--ink); }
            svg text.marked { font-weight: 700; }
            svg a { fill: var(--link); text-decoration: underline; }
            .run { stroke: var(--line); stroke-width: 1.5; }
            .trunk { stroke-width: 4; }
            .open { stroke-dasharray: 4 3; }
            .run.marked { stroke: var(--mark); stroke-width: 4; }
            .trunk.marked { stroke-width: 7; }
            .caution { border: 1px solid var(--line); padding: 0.6rem; max-width: 60rem; }
            @media print { :root { --line: #555; --head: #eee; --back: #fff; --ink: #000; --mark: #000; --good: #000;
              --link: #000; } body { margin: 0; font-size: 9pt; } .skip { display: none; }
              .wide { overflow: visible; } svg { max-width: 100%; height: auto; }
              thead { display: table-header-group; } tr, figure { break-inside: avoid; }
              h2, caption { break-after: avoid; } }
            @page { margin: 15mm; }
            """;

    private PageStyle() {
    }
}

package org.stepwell.table;

import java.util.function.UnaryOperator;

/**
 * Two mistakes that an outbox may make, each put before the page's own code on its way to the browser. A campaign that
 * does not find them finds nothing.
 */
enum PlantedBug {
    /** The look leaves the tablet when it is sent, not when the server has named it. */
    REMOVES_BEFORE_ACKNOWLEDGED("""
            const fetch = (path, options) => {
              const answer = globalThis.fetch(path, options);
              if (options?.method !== 'POST' || !String(path).startsWith('/api/observations')) {
                return answer;
              }
              answer.catch(() => {});
              const verdicts = JSON.parse(options.body).map(({ id }) => ({ id, status: 'stored', reason: null }));
              return Promise.resolve(Response.json(verdicts));
            };
            """),
    /** A look that is sent again gets a new id, so that the server cannot know it. */
    SENDS_AGAIN_UNDER_A_NEW_ID("""
            const seen = new Set();
            const fetch = async (path, options) => {
              if (options?.method !== 'POST' || !String(path).startsWith('/api/observations')) {
                return globalThis.fetch(path, options);
              }
              const records = JSON.parse(options.body);
              const old = records.map(({ id }) => id);
              records.forEach((record) => { if (seen.has(record.id)) { record.id = crypto.randomUUID(); } });
              old.forEach((id) => seen.add(id));
              const response = await globalThis.fetch(path, { ...options, body: JSON.stringify(records) });
              if (!response.ok) {
                return response;
              }
              const verdicts = await response.json();
              return Response.json(verdicts.map((verdict, i) => ({ ...verdict, id: old[i] })));
            };
            """);

    private final String code;

    PlantedBug(String code) {
        this.code = code;
    }

    /** The module that speaks to the server, with the mistake before it. */
    UnaryOperator<String> inModule() {
        return module -> code + module;
    }
}

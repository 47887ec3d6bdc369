package org.stepwell.table;

/** One invented class as the server describes it to the page. */
final class TableFixture {
    private TableFixture() {}

    static String table(String signIn, String time) {
        return """
                {"adult":{"id":"%3$s","signIn":"%1$s","name":"An Adult"},"class":{"id":"c1","name":"Room 6"},
                 "children":[
                  {"child":"k1","given_name":"Itzel","label":"Itzel"},
                  {"child":"k2","given_name":"Oleksandr","label":"Oleksandr",
                   "ask":{"T05":{"question":1,"numbers":["17","14"]}},"again":["T02"]},
                  {"child":"k3","given_name":"Sof\u00eda","label":"Sof\u00eda M."},
                  {"child":"k4","given_name":"Sof\u00eda","label":"Sof\u00eda R."},
                  {"child":"k5","given_name":"Tane","label":"Tane","ask":{"T05":{"question":0}},"again":[]},
                  {"child":"k6","given_name":"Linh","label":"Linh"},
                  {"child":"k7","given_name":"Kwabena","label":"Kwabena"},
                  {"child":"k8","given_name":"Noor","label":"Noor"}],
                 "skills":[
                  {"code":"T05","title":{"en":"Teens as ten and ones","es":"Del 11 al 19 como diez y unidades"},
                   "phrases":[
                    {"code":"counted_all","step":1,"text":{"en":"Counted all from one","es":"Cont\u00f3 todo desde uno"}},
                    {"code":"began_at_ten","step":2,"text":{"en":"Began at ten, counted on","es":"Empez\u00f3 en diez"}},
                    {"code":"made_ten","step":3,"text":{"en":"Made a ten and the extras","es":"Hizo un diez"}},
                    {"code":"said_ten","step":4,"text":{"en":"Said ten and seven, nothing out","es":"Dijo diez y siete"}},
                    {"code":"heard_ten","step":4,"text":{"en":"Heard ten and seven, said 17","es":"Oy\u00f3 diez y siete"}},
                    {"code":"wrote_it","step":5,"text":{"en":"Wrote 10 + 7 and showed where","es":"Escribi\u00f3 10 + 7"}}],
                   "errors":[{"code":"digits_swapped","text":{"en":"digits swapped","es":"cifras invertidas"}}],
                   "questions":[{"en":"Build this number. How did you do it?","es":"Forma este n\u00famero."},
                    {"en":"Nothing out: ten and how many more?","es":"Sin nada en la mesa: \u00bfdiez y cu\u00e1ntos m\u00e1s?"}],
                   "numbers":["14","16","17"],"objectsBelong":[]},
                  {"code":"T02","title":{"en":"How many, count out","es":"Cu\u00e1ntos hay"},
                   "phrases":[{"code":"counted_out","step":4,"text":{"en":"Counted out 17 and stopped","es":"Cont\u00f3 17"}}],
                   "errors":[],"numbers":[],"objectsBelong":[4,5]}],
                 "focusSkill":"T05","seenThisWeek":["k1"],"zone":"America/Chicago","serverTime":"%2$s"}
                """.formatted(signIn, time, "a" + signIn.hashCode());
    }
}

package org.stepwell.tier.ui;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.stepwell.core.tier.Measure;
import org.stepwell.core.tier.Requirement;
import org.stepwell.core.tier.Rule;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.wording.SuggestionWording;

/** What somebody chose to try: rules that ship or a text of their own, and perhaps one other threshold. */
final class WhatIfRules {
    static final String OWN = "own";
    static final String NO_CHANGE = "";
    private static final double TEN = 10;

    private String source = RuleFile.CONVENTIONAL;
    private String text = RuleFile.shippedText(RuleFile.DEFAULT);
    private String place = NO_CHANGE;
    private String number = "";

    void source(String chosen) {
        source = chosen;
        place = NO_CHANGE;
    }

    String source() {
        return source;
    }

    void text(String own) {
        text = own;
    }

    String text() {
        return text;
    }

    void place(String chosen) {
        place = chosen;
    }

    void number(String written) {
        number = written;
    }

    String place() {
        return place;
    }

    /**
     * The rules before any change of a threshold.
     *
     * @throws IllegalArgumentException naming every bad line and key of the own text
     */
    RuleFile chosen(String name) {
        return source.equals(OWN) ? RuleFile.read(text, name) : RuleFile.shipped(source);
    }

    /** The thresholds of the rules that can be changed, in words; keys for {@link #place(String)}. */
    static Map<String, String> thresholds(RuleFile rules, SuggestionWording words) {
        Map<String, String> all = new LinkedHashMap<>();
        put(all, "enough", rules.enough(), words);
        put(all, "newcomer", rules.newcomers(), words);
        for (Rule rule : rules.rules()) {
            put(all, rule.id(), rule.needs(), words);
        }
        return all;
    }

    private static void put(Map<String, String> all, String place, List<Requirement> required,
            SuggestionWording words) {
        required.forEach(one -> all.put(place + "." + one.measure().code(),
                place.replace('_', ' ') + ": " + words.requirement(one)));
    }

    /**
     * The rules to try.
     *
     * @param name what to call the own text in messages
     * @throws NumberFormatException when the new number is none
     * @throws IllegalArgumentException naming what is wrong: lines and keys of the text, or a number out of range
     */
    RuleFile tried(String name) {
        RuleFile rules = chosen(name);
        if (place.equals(NO_CHANGE)) {
            return rules;
        }
        int dot = place.lastIndexOf('.');
        Measure measure = Measure.valueOf(place.substring(dot + 1).toUpperCase(Locale.ROOT));
        double value = Double.parseDouble(number.strip().replace(',', '.'));
        return rules.with(place.substring(0, dot), measure, measure.share() ? value / TEN : value);
    }
}

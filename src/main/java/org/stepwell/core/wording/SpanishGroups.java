package org.stepwell.core.wording;

import java.util.List;
import org.stepwell.core.grouping.SeatReason;

/** Groups in Spanish; wants a native reader. The same care for small numbers and single letters as in English. */
final class SpanishGroups implements GroupPhrases {
    private static final List<String> NUMBERS = List.of("cero", "uno", "dos", "tres", "cuatro", "cinco", "seis",
            "siete", "ocho", "nueve", "diez");

    private static String number(int count) {
        return count < NUMBERS.size() ? NUMBERS.get(count) : "muchos";
    }

    @Override
    public String next(String skill, int step) {
        return "Ahora toca " + skill + (step == 0 ? ", desde el principio." : ", desde el paso " + number(step) + ".");
    }

    @Override
    public String next(String skill) {
        return "Ahora toca " + skill + "; las primeras tareas en la mesa dirán por dónde empezar.";
    }

    @Override
    public String notSeen() {
        return "Sin observaciones hasta ahora; las primeras tareas en la mesa dirán por dónde empezar.";
    }

    @Override
    public String others(SeatReason reason) {
        if (reason.others() == 0) {
            return "Nadie más se sienta ahí.";
        }
        if (reason.focus() == null) {
            return "En esta mesa había lugar.";
        }
        if (reason.sameFocus() == 0) {
            return "Nadie más en la mesa trabaja en eso.";
        }
        String same = reason.sameFocus() == reason.others() ? "Toda la mesa trabaja en eso"
                : reason.sameFocus() == 1 ? "Otra persona de la mesa trabaja en eso"
                : "Otros " + number(reason.sameFocus()) + " de la mesa trabajan en eso";
        return same + (reason.near() == reason.sameFocus() ? ", desde casi el mismo paso." : ".");
    }

    @Override
    public String company(SeatReason.Company company) {
        return switch (company) {
            case UNKNOWN -> "";
            case NEW -> "La compañía es casi toda nueva.";
            case KNOWN -> "La compañía es casi la misma que la última vez.";
        };
    }

    @Override
    public String kept(SeatReason.Kept kept) {
        return switch (kept) {
            case COMPANY -> "Se cumplen los deseos sobre la compañía.";
            case PLACE -> "El lugar estaba fijado.";
            case TIME -> "El turno en la mesa no coincide con la salida.";
            case SECOND_ADULT -> "La segunda persona adulta atiende este grupo.";
        };
    }

    @Override
    public List<String> bare() {
        return List.of("En esta mesa había lugar.", "Los grupos quedan parejos.", "Buen lugar.", "Listo.");
    }

    @Override
    public String list(List<String> words) {
        if (words.size() < 2) {
            return String.join("", words);
        }
        String last = words.getLast();
        boolean sounds = last.matches("(?iu)(i|hi(?!e)).*");
        return String.join(", ", words.subList(0, words.size() - 1)) + (sounds ? " e " : " y ") + last;
    }

    @Override
    public String apart(String one, String other) {
        return list(List.of(one, other)) + " por separado";
    }

    @Override
    public String together(String one, String other) {
        return list(List.of(one, other)) + " en el mismo grupo";
    }

    @Override
    public String inGroup(String child, int group) {
        return child + " en el grupo " + group;
    }

    @Override
    public String away(String child, int rotation) {
        return child + " fuera en la rotación " + rotation;
    }

    @Override
    public String withSecondAdult(String child) {
        return child + " con la segunda persona adulta";
    }

    @Override
    public String unknown(String child) {
        return child + " aparece en un deseo y no está en la clase.";
    }

    @Override
    public String noSuchGroup(String wish, int groups) {
        return wish + " no puede ser: los grupos van del 1 al " + groups + ".";
    }

    @Override
    public String apartFromItself(String child) {
        return "No se puede separar a " + child + " de " + child + "; indique dos niños.";
    }

    @Override
    public String both(String one, String other, String through) {
        return "Se pide que " + list(List.of(one, other)) + " estén en el mismo grupo y también por separado"
                + (through.isEmpty() ? "." : "; lo que los junta: " + through + ".");
    }

    @Override
    public String tooLong(String children, int count, int places) {
        return "Se pide que " + children + " estén en el mismo grupo: son " + count
                + ", y en el grupo más grande caben " + places + ".";
    }

    @Override
    public String twoPlaces(String wishes) {
        return "No puede ser todo a la vez: " + wishes + ".";
    }

    @Override
    public String apartInOnePlace(String one, String other, int group) {
        return "Se pide que " + list(List.of(one, other)) + " estén por separado, y los dos tienen lugar en el grupo "
                + group + ".";
    }

    @Override
    public String noPlace(String children, String wishes) {
        return "No queda grupo para " + children + ": " + wishes + ".";
    }

    @Override
    public String tooFull(String children, int count, int places) {
        return "Se pide que " + children + " se sienten en un grupo: son " + count
                + ", y en el grupo más grande caben " + places + ".";
    }

    @Override
    public String tooManyApart(String children, int groups) {
        return "Con " + groups + (groups == 1 ? " grupo" : " grupos") + " no se puede separar a todos entre sí: "
                + children + ".";
    }

    @Override
    public String notAll(String wishes) {
        return "Estos deseos no se pueden cumplir todos; basta con quitar uno cualquiera: " + wishes + ".";
    }

    @Override
    public String noneFound(String wishes) {
        return "No se encontraron grupos que cumplan todos estos deseos, aunque no se probó todo; quite uno: "
                + wishes + ".";
    }
}

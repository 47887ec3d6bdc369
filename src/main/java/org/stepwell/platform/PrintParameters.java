package org.stepwell.platform;

import java.util.Arrays;
import java.util.Map;
import org.springframework.format.FormatterRegistry;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.pdf.PdfDocument.Paper;

/** Language and paper as parameters of whatever is printed; another word is answered by what is accepted. */
@RestControllerAdvice
class PrintParameters implements WebMvcConfigurer {
    private static final Map<Class<?>, String> ACCEPTED = Map.of(Language.class, "en or es", Paper.class, "letter or a4");

    @Override
    public void addFormatters(FormatterRegistry registry) {
        registry.addConverter(String.class, Language.class, Language::of);
        registry.addConverter(String.class, Paper.class, PrintParameters::paper);
    }

    private static Paper paper(String word) {
        return Arrays.stream(Paper.values()).filter(paper -> paper.name().equalsIgnoreCase(word)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no paper: " + word));
    }

    @ExceptionHandler(MethodArgumentTypeMismatchException.class)
    ResponseEntity<Map<String, String>> notOfThese(MethodArgumentTypeMismatchException wrong) {
        String accepted = wrong.getRequiredType() == null ? null : ACCEPTED.get(wrong.getRequiredType());
        if (accepted == null) {
            throw wrong;
        }
        return ResponseEntity.badRequest().contentType(MediaType.APPLICATION_JSON)
                .body(Map.of("error", wrong.getName() + " is " + accepted));
    }
}

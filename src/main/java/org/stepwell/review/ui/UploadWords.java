package org.stepwell.review.ui;

import com.vaadin.flow.component.upload.UploadI18N;
import org.stepwell.platform.ui.Words;

/** What the control that takes a file says. */
final class UploadWords {
    private UploadWords() {
    }

    static UploadI18N of(Words texts) {
        return new UploadI18N()
                .setAddFiles(new UploadI18N.AddFiles().setOne(texts.say("in.choose")).setMany(texts.say("in.choose")))
                .setError(new UploadI18N.Error().setTooManyFiles(texts.say("in.refused"))
                        .setFileIsTooBig(texts.say("in.refused")).setIncorrectFileType(texts.say("in.refused")))
                .setUploading(new UploadI18N.Uploading()
                        .setStatus(new UploadI18N.Uploading.Status().setConnecting(texts.say("in.reading"))
                                .setStalled(texts.say("in.waiting")).setProcessing(texts.say("in.reading"))
                                .setHeld(texts.say("in.waiting")))
                        .setError(new UploadI18N.Uploading.Error().setServerUnavailable(texts.say("in.unreachable"))
                                .setUnexpectedServerError(texts.say("in.unreachable"))
                                .setForbidden(texts.say("in.unreachable"))));
    }
}

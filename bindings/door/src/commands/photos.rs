//! Photos: the bytes go into the store by their hash, the fact that they show something goes into the changes.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::error::Refusal;
use layshaft_core::record::Photo;
use layshaft_storage::Attachment;

use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{AttachPhoto, PutPhotoAway};
use crate::write::Writing;

impl Act for AttachPhoto {
    fn write(&self, _: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let file = Attachment::of(&self.media, self.bytes.clone());
        let photo = Photo {
            of_kind: self.of_kind.clone(),
            of: self.of.clone(),
            hash: file.hash.clone(),
            media: self.media.clone(),
            caption: self.caption.clone(),
            taken_ms: call.moment.now_ms,
        };
        let photo = photo.checked(self.bytes.len())?;
        Ok(Writing { attachment: Some(file), ..Writing::making(call.id, edits(call.id, &photo, None)) })
    }
}

impl Act for PutPhotoAway {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        bench.record::<Photo>(&self.id)?;
        Ok(Writing::of(vec![Edit::gone::<Photo>(&self.id, true)]))
    }
}

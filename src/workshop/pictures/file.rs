//! A picture in a PNG file.

use bevy::image::Image;
use bevy::render::render_resource::TextureFormat;
use std::fs::File;
use std::io::BufWriter;
use std::path::Path;
use thiserror::Error;

/// Why a picture was not saved.
#[derive(Debug, Error)]
pub enum NotSaved {
    /// The renderer gave pixels of a kind that is not known here.
    #[error("pixels of the kind {0:?} cannot be saved")]
    Pixels(TextureFormat),
    /// One shade fills it: nothing was drawn.
    #[error("nothing was drawn")]
    Empty,
    /// The file could not be written.
    #[error(transparent)]
    File(#[from] std::io::Error),
    /// The picture could not be encoded.
    #[error(transparent)]
    Encoding(#[from] png::EncodingError),
}

/// Saves a picture.
///
/// # Errors
/// [`NotSaved`] for empty pictures, unknown pixels and files that cannot be written.
pub fn save(image: &Image, path: &Path) -> Result<(), NotSaved> {
    let pixels = image.data.as_deref().unwrap_or_default();
    let colors = colors(pixels, image.texture_descriptor.format)?;
    if colors.windows(6).all(|two| two[..3] == two[3..]) {
        return Err(NotSaved::Empty);
    }
    encode(path, [image.width(), image.height()], &colors)
}

/// Writes red, green and blue of each pixel, line by line, into a file.
///
/// # Errors
/// [`NotSaved`] when the file cannot be written.
pub fn encode(path: &Path, [width, height]: [u32; 2], colors: &[u8]) -> Result<(), NotSaved> {
    let mut encoder = png::Encoder::new(BufWriter::new(File::create(path)?), width, height);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header()?;
    writer.write_image_data(colors)?;
    writer.finish()?;
    Ok(())
}

/// Red, green and blue of each pixel; how far it can be seen through is left out.
fn colors(pixels: &[u8], format: TextureFormat) -> Result<Vec<u8>, NotSaved> {
    let order = match format {
        TextureFormat::Bgra8Unorm | TextureFormat::Bgra8UnormSrgb => [2, 1, 0],
        TextureFormat::Rgba8Unorm | TextureFormat::Rgba8UnormSrgb => [0, 1, 2],
        other => return Err(NotSaved::Pixels(other)),
    };
    Ok(pixels.chunks_exact(4).flat_map(|pixel| order.map(|channel| pixel[channel])).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_blue_comes_first_in_one_kind_and_last_in_the_other() {
        let pixel = [10, 20, 30, 255];
        assert_eq!(colors(&pixel, TextureFormat::Bgra8Unorm).unwrap(), [30, 20, 10]);
        assert_eq!(colors(&pixel, TextureFormat::Rgba8UnormSrgb).unwrap(), [10, 20, 30]);
        let other = colors(&pixel, TextureFormat::R8Unorm);
        assert!(matches!(other, Err(NotSaved::Pixels(TextureFormat::R8Unorm))));
    }
}

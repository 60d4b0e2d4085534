//! An author's picture: how large it is, from the head of its file. The only place that knows the crate for that.

use crate::diagnostic::{Code, Finding, Level};

/// From here on a picture is heavy for a phone, bytes.
const HEAVY: usize = 400_000;

/// No drawing is so large, px.
const LARGEST: f64 = 100_000.0;

/// How large a picture is, px.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Size {
    /// Width.
    pub width: u32,
    /// Height.
    pub height: u32,
}

/// Reads a picture's size. What is no picture that browsers show is a finding, and so is a heavy one.
pub fn read_picture(path: &str, bytes: &[u8], findings: &mut Vec<Finding>) -> Option<Size> {
    let ending = path.rsplit_once('.').map_or(String::new(), |(_, ending)| ending.to_lowercase());
    let size = match ending.as_str() {
        "svg" => std::str::from_utf8(bytes).ok().and_then(drawn),
        "gif" | "jpg" | "jpeg" | "png" | "webp" => imagesize::blob_size(bytes).ok().and_then(|size| {
            Some(Size { width: size.width.try_into().ok()?, height: size.height.try_into().ok()? })
        }),
        _ => None,
    };
    let Some(size) = size.filter(|size| size.width > 0 && size.height > 0) else {
        findings.push(
            Finding::of_file(Level::Error, Code::BadPicture, path, "this is not a picture that can be shown")
                .why("pictures are .jpg, .png, .webp, .gif or .svg files; of a drawing the size is its width and height, or its viewBox")
                .write("save it as one of those, or take it out of pictures/"),
        );
        return None;
    };
    if bytes.len() > HEAVY {
        let message = format!("the picture weighs {} kB", bytes.len() / 1000);
        findings.push(
            Finding::of_file(Level::Warning, Code::BadPicture, path, message)
                .why("a reader on a phone waits for it, and pays for it")
                .write("save it no wider than 1,600 pixels, as .webp or .jpg"),
        );
    }
    Some(size)
}

/// The size of a drawing: what its first tag says of width and height, else of its view box.
fn drawn(text: &str) -> Option<Size> {
    // What stands in a comment is no tag.
    let bare: String = text.split("<!--").enumerate().fold(String::new(), |so, (n, piece)| {
        so + if n == 0 { piece } else { piece.split_once("-->").map_or("", |(_, rest)| rest) }
    });
    let tag = bare.split_once("<svg")?.1.split_once('>')?.0;
    let value = |name: &str| {
        let parts: Vec<&str> = tag.split(['"', '\'']).collect();
        // Between the quotes stand values, before each its name and an equals sign.
        let named = parts.chunks_exact(2).find(|two| {
            two[0]
                .trim_end()
                .strip_suffix('=')
                .is_some_and(|before| before.split_whitespace().last() == Some(name))
        });
        named.map(|two| two[1])
    };
    let number = |text: &str| {
        let value = text.trim().trim_end_matches("px").parse::<f64>().ok()?;
        (0.5..LARGEST).contains(&value).then(|| value.round() as u32)
    };
    if let (Some(width), Some(height)) = (value("width").and_then(number), value("height").and_then(number)) {
        return Some(Size { width, height });
    }
    let blank = |c: char| c == ',' || c.is_whitespace();
    match value("viewBox")?.split(blank).filter(|text| !text.is_empty()).collect::<Vec<_>>()[..] {
        [_, _, width, height] => Some(Size { width: number(width)?, height: number(height)? }),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // SVG 2, section 8.2: width and height are the size of the viewport; the view box is `min-x min-y width height`.
    #[test]
    fn a_drawing_says_how_large_it_is() {
        assert_eq!(
            drawn("<?xml?>\n<svg width=\"320\" height=\"180px\">"),
            Some(Size { width: 320, height: 180 })
        );
        assert_eq!(drawn("<svg\n  viewBox = '0 0 6 4'\n>"), Some(Size { width: 6, height: 4 }));
        assert_eq!(drawn("<svg viewBox=\"0 0 64 48.4\">"), Some(Size { width: 64, height: 48 }));
        assert_eq!(drawn("<svg width=\"100%\">"), None);
        assert_eq!(drawn("nothing"), None);
        assert_eq!(
            drawn("<!-- <svg width=\"1\" height=\"1\"> --><svg viewBox=\"0,0\n10\t20\">"),
            Some(Size { width: 10, height: 20 })
        );
        assert_eq!(
            drawn("<svg width=\"0.4\" height=\"-4\" viewBox=\"0 0 4 5\">"),
            Some(Size { width: 4, height: 5 })
        );
        assert_eq!(drawn("<svg width=\"1e30\" height=\"inf\">"), None);
    }

    // Portable Network Graphics (W3C), 11.2.2: eight bytes of signature, then the chunk IHDR with width and height.
    #[test]
    fn a_photograph_says_how_large_it_is() {
        let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
        png.extend([0, 0, 1, 64, 0, 0, 0, 180, 8, 2, 0, 0, 0]);
        let mut findings = Vec::new();
        let size = read_picture("pictures/a.png", &png, &mut findings);
        assert_eq!((size, findings.len()), (Some(Size { width: 320, height: 180 }), 0));
        assert_eq!(read_picture("pictures/a.bmp", &png, &mut findings), None);
        png.extend(vec![0; HEAVY]);
        read_picture("pictures/a.png", &png, &mut findings);
        assert_eq!(
            findings.iter().map(|finding| finding.level).collect::<Vec<_>>(),
            [Level::Error, Level::Warning]
        );
    }
}

//! How many bytes a first visit costs.

use std::io::Write;
use std::path::Path;

use crate::Outcome;

/// Prints raw, gzip 9 and brotli 11 bytes of every built file and their sum.
pub fn print(dist: &Path) -> Outcome<()> {
    let trouble = |e: std::io::Error| {
        format!(
            "Cannot read {}: {e}. Run `cargo xtask dist` first.",
            dist.display()
        )
    };
    let mut files: Vec<_> = std::fs::read_dir(dist)
        .and_then(|entries| {
            entries
                .map(|entry| Ok(entry?.path()))
                .collect::<std::io::Result<Vec<_>>>()
        })
        .map_err(trouble)?;
    files.sort();
    println!("{:>10} {:>10} {:>10}  file", "raw", "gzip 9", "brotli 11");
    let mut sum = [0; 3];
    for file in files {
        let bytes = std::fs::read(&file).map_err(trouble)?;
        let row = [bytes.len(), gzip(&bytes), brotli(&bytes)];
        for (total, one) in sum.iter_mut().zip(row) {
            *total += one;
        }
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        println!("{:>10} {:>10} {:>10}  {name}", row[0], row[1], row[2]);
    }
    println!("{:>10} {:>10} {:>10}  everything", sum[0], sum[1], sum[2]);
    Ok(())
}

fn gzip(bytes: &[u8]) -> usize {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder
        .write_all(bytes)
        .and_then(|()| encoder.finish())
        .expect("memory does not refuse bytes")
        .len()
}

fn brotli(bytes: &[u8]) -> usize {
    let mut packed = Vec::new();
    let mut encoder = brotli::CompressorWriter::new(&mut packed, 4096, 11, 22);
    encoder
        .write_all(bytes)
        .expect("memory does not refuse bytes");
    drop(encoder);
    packed.len()
}

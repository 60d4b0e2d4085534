//! Numbers drawn by a stated seed: the same book gives every class the same versions.

/// Versions are called so.
pub const LETTERS: [&str; 6] = ["A", "B", "C", "D", "E", "F"];

/// A stream of numbers: SplitMix64 (Steele, Lea and Flood 2014, by its published constants).
#[derive(Clone, Debug)]
pub struct Seed(u64);

impl Seed {
    /// The stream of one exercise in one version of a book's seed.
    pub fn of(seed: u64, exercise: &str, version: usize) -> Seed {
        // FNV-1a over the name, so that each exercise has numbers of its own.
        let name = exercise.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
            (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
        });
        let mut stream = Seed(seed ^ name);
        stream.0 = stream.next().wrapping_add(version as u64);
        stream
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A whole number below `most`; 0 where there is none.
    pub fn below(&mut self, most: usize) -> usize {
        // The remainder of 64 bits by a number below a hundred leans by less than one in 10^17.
        if most == 0 { 0 } else { (self.next() % most as u64) as usize }
    }

    /// The places 0 to `count` in an order that is not their own, where they have two.
    pub fn shuffled(&mut self, count: usize) -> Vec<usize> {
        let mut places: Vec<usize> = (0..count).collect();
        for at in (1..count).rev() {
            places.swap(at, self.below(at + 1));
        }
        if count > 1 && places.windows(2).all(|pair| pair[0] < pair[1]) {
            places.rotate_left(1);
        }
        places
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The first numbers of SplitMix64 from the seed 1234567, as its authors' reference prints them.
    #[test]
    fn the_stream_is_the_published_one() {
        let mut stream = Seed(1_234_567);
        let first: Vec<u64> = (0..3).map(|_| stream.next()).collect();
        assert_eq!(first, [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423]);
    }

    #[test]
    fn an_order_is_never_the_own_one_and_loses_nothing() {
        for seed in 0..200 {
            let order = Seed::of(seed, "steps", 0).shuffled(5);
            assert!(order.windows(2).any(|pair| pair[0] > pair[1]), "{order:?}");
            let mut sorted = order.clone();
            sorted.sort();
            assert_eq!(sorted, [0, 1, 2, 3, 4]);
        }
        assert_eq!(Seed::of(1, "steps", 0).shuffled(1), [0]);
    }
}

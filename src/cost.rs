//! What a batch costs: as used, and with whole packs.
//!
//! Used is what is needed, by the pack's size, times its price; bought is as many whole packs as that takes. Both as
//! a cost sheet is kept on paper: common practice, no source. Water from the tap is not charged.

use crate::formula::Sum;
use crate::formula::catalogue::class::{CostOfPacks, CostUsed, Packs};
use crate::formulary::{Pack, Prices};
use crate::measure::{Dimension, Form};
use crate::method::Ingredient;
use crate::variation::Worked;

/// The bill of a batch.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bill {
    /// What is paid for, in the order it is put in.
    pub items: Vec<Item>,
    /// What has no price, or none for the measure it is taken by.
    pub unpriced: Vec<String>,
}

/// One thing that is bought.
#[derive(Clone, PartialEq, Debug)]
pub struct Item {
    /// What it is called in running text.
    pub words: String,
    /// How much is needed, in the pack's unit.
    pub needed: f64,
    /// The pack.
    pub pack: Pack,
}

impl Item {
    /// How many whole packs that takes.
    pub fn packs(&self) -> f64 {
        let mut sum = Sum::default();
        let (needed, holds) = (sum.line(self.needed), sum.line(self.pack.holds));
        sum.gives(Packs { needed, holds })
    }

    /// What is used of it costs so much.
    pub fn used(&self) -> f64 {
        let mut sum = Sum::default();
        let (needed, holds) = (sum.line(self.needed), sum.line(self.pack.holds));
        let price = sum.line(self.pack.price);
        sum.gives(CostUsed { needed, holds, price })
    }

    /// What is bought costs so much.
    pub fn bought(&self) -> f64 {
        let mut sum = Sum::default();
        let (packs, price) = (sum.line(self.packs()), sum.line(self.pack.price));
        sum.gives(CostOfPacks { packs, price })
    }
}

impl Bill {
    /// What is used of all of it.
    pub fn used(&self) -> f64 {
        self.items.iter().map(Item::used).sum()
    }

    /// What is bought, all together.
    pub fn bought(&self) -> f64 {
        self.items.iter().map(Item::bought).sum()
    }
}

/// The bill; none where nothing in it has a price.
pub fn bill(worked: &Worked, prices: &Prices) -> Option<Bill> {
    let mut bill = Bill::default();
    for ingredient in worked.laid.ingredients.iter().filter(|ingredient| !is_water(ingredient)) {
        match priced(worked, ingredient, prices) {
            // The same thing put in twice is bought once.
            Some((needed, pack)) => {
                let same = |item: &&mut Item| item.pack == *pack && item.words == ingredient.words;
                match bill.items.iter_mut().find(same) {
                    Some(item) => item.needed += needed,
                    None => {
                        bill.items.push(Item { words: ingredient.words.clone(), needed, pack: pack.clone() })
                    }
                }
            }
            None => {
                let made = if ingredient.href.is_some() { ", made before" } else { "" };
                let name = format!("{}{made}", ingredient.words);
                if !bill.unpriced.contains(&name) {
                    bill.unpriced.push(name);
                }
            }
        }
    }
    (!bill.items.is_empty()).then_some(bill)
}

fn is_water(ingredient: &Ingredient) -> bool {
    let bare = ingredient.plant.is_none() && ingredient.item.is_none() && ingredient.href.is_none();
    bare && ingredient.words.contains("water")
}

fn priced<'a>(worked: &Worked, ingredient: &Ingredient, prices: &'a Prices) -> Option<(f64, &'a Pack)> {
    let name = match (&ingredient.plant, ingredient.form) {
        (Some(plant), Some(Form::Fresh)) => format!("fresh {plant}"),
        (Some(plant), _) => plant.clone(),
        (None, _) => ingredient.item.clone()?,
    };
    let pack = prices.pack(&name)?;
    let line = if pack.unit.dimension == Dimension::MASS { ingredient.weight } else { ingredient.volume };
    Some((worked.at(line?), pack))
}

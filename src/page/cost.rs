//! What a batch costs, item by item: as used and with whole packs.

use super::show::capital;
use super::view::{Cell, Head, PartLink, VariationRow, Variations};
use crate::cost::{Bill, bill};
use crate::formulary::Prices;
use crate::measure::{decimal, show_usual};
use crate::variation::Worked;

/// Money, to the hundredth.
pub fn money(value: f64) -> String {
    decimal(value, 2)
}

/// What is used and what is bought, in a line: "£ 3.85 as used, 7.00 in whole packs".
pub fn in_short(bill: &Bill, currency: &str) -> String {
    let sum = format!("{currency} {} as used, {} in whole packs", money(bill.used()), money(bill.bought()));
    match bill.unpriced[..] {
        [] => sum,
        _ => format!("{sum}; without {}", bill.unpriced.join(", ")),
    }
}

/// The table; none where nothing has a price.
pub fn table(worked: &Worked, prices: &Prices) -> Option<Variations> {
    let bill = bill(worked, prices)?;
    let names = ["Needed", "Sold as", "Price", "Packs", "Bought", "Used"];
    let heads = names.map(|name| Head {
        text: name.into(),
        short: name.into(),
        group: name == "Bought",
        words: false,
    });
    let row = |name: String, base: bool, texts: [String; 6]| {
        let cells = names.into_iter().zip(texts);
        let cells = cells.map(|(label, text)| Cell { text, label: label.into(), ..Cell::default() });
        VariationRow { name, base, change: String::new(), cells: cells.collect() }
    };
    let mut rows: Vec<VariationRow> = bill
        .items
        .iter()
        .map(|item| {
            let needed = show_usual(item.needed, item.pack.unit);
            let texts = [
                needed,
                item.pack.written.clone(),
                money(item.pack.price),
                decimal(item.packs(), 0),
                money(item.bought()),
                money(item.used()),
            ];
            row(capital(&item.words), false, texts)
        })
        .collect();
    let nothing = String::new;
    rows.push(row(
        "Together".into(),
        true,
        [nothing(), nothing(), nothing(), nothing(), money(bill.bought()), money(bill.used())],
    ));
    let missing = match bill.unpriced[..] {
        [] => String::new(),
        _ => format!(" No price is known of {}.", bill.unpriced.join(", ")),
    };
    let caption = format!(
        "In {}. Used is what is needed by the pack, times its price; bought is whole packs. Bottles and labels are not in it.{missing}",
        prices.currency
    );
    Some(Variations { part: PartLink::default(), caption, heads: heads.to_vec(), rows })
}

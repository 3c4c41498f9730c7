use duckboard::draw::{Canvas, under::under, orders::orders};
use duckboard::engine::{sample, entry::DeviceId, job::{Book, Record}, take::Units, orders::order_list};
#[test]
fn show() {
    let book = Book::of(sample::entries(DeviceId::new(7)).into_iter().map(|e| Record::of(e).unwrap()));
    let canvas = Canvas { width_px: 340, height_px: 280 };
    let list = order_list(&book, Units::default());
    for c in under(book.job(), Units::default(), canvas).into_iter().chain(orders(book.job(), &list)) {
        println!("## {} -- {}", c.title, c.headline);
        for l in c.lines { println!("   {:?} {}", l.tone, l.text); }
        println!("   [{} asks, {} fields]", c.asks.len(), c.fields.len());
    }
    println!("{}", duckboard::file::tables::orders::csv(&list));
}

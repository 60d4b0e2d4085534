"use strict";
// The rules that this book's numbers were worked by, for a reader who puts in her own: the same steps in the same order
// as in the program that pressed it. What a formula is stands in formulas.js.
(() => {
  const { formulas, pow, greater } = globalThis.stillroomFormulas;
  const book = {"accuracy":{"boiling":0.1,"by-volume":0.00005,"share-by-weight":0.00005,"spirit-density":0.00001,"stage-here":2.0,"water-activity":0.01,"water-activity-honey":0.03},"activityKnown":[["glycerol-in-water",0.6],["sugar-in-water",0.68]],"cautions":{"alcohol":["warning","It holds alcohol{}","Not for children, in pregnancy, while nursing, with liver disease or in recovery; ask a pharmacist where medicines forbid it. Keep spirit and its vapour from flames."],"aromatic-boiled":["warning","Part of the aroma is lost from the {}","What is volatile leaves with the steam; a covered infusion keeps more of it."],"ceiling":["warning","A daily ceiling","{}. Everything taken that day counts towards it."],"ceiling-passed":["stop","More than a day’s ceiling: {}","The press refuses the recipe."],"ferments":["warning","It may ferment in the bottle","Gas bursts tight glass. Keep it cold, open it to let the gas out, use a cork that can give, and throw it away if it fizzes."],"fresh-in-oil-kept":["stop","Fresh plants in oil, kept","The press refuses the recipe."],"hot-bath":["warning","By the sum this bath is hotter than 40 °C (104 °F)","Let it cool, or add cold water, and measure before anyone gets in."],"hot-honey":["warning","The honey is warmed","Stirred in above 40 °C (104 °F) it is no longer raw."],"no-longer":["warning","Not without a pause","{}."],"raw":["stop","Not cooked: {}","The press refuses the recipe."],"sugar":["warning","Sugars: {}","Count them with diabetes, and rinse the mouth after."]},"first":["plants","water","liquid","spirit","strong-spirit","water-to-add","wax","boiled-off","held-back","strained","reduced-by","reduced","sweetener","sweetener-weight","finished","finished-weight","solids","water-activity","abv","acidity","glycerin","water-in-oil","moisture","free-water","strength","doses","pieces","plant-per-dose","sugar-per-dose","alcohol-per-dose","energy-per-dose","bath-water","temperature","room","area","stage"],"fluidOunce":29.5735295625,"ladder":[{"all":[["is","area"]],"because":"warm, wet and handled, it is the best of beds for microbes","class":"N","verdict":"does not keep out of the cold","words":"use it at once; nothing of it is kept"},{"all":[["is","bath-water"]],"because":"warm, wet and handled, it is the best of beds for microbes","class":"N","verdict":"does not keep out of the cold","words":"use it at once; nothing of it is kept"},{"all":[["is","pieces"]],"because":"it is dry, and sugar draws damp; nobody has published how long","class":"L","verdict":"no published rule decides; go by the words, and look at it","words":"dry and dark in a closed tin, 2 months"},{"all":[["has-not","finished"],["has","finished-weight"]],"because":"it is dry, and stays so while the jar is closed; nobody has published how long","class":"K","verdict":"no published rule decides; go by the words, and look at it","words":"dry and dark in a closed jar, 1 year"},{"all":[["most","moisture",0.186,"18.6 % w/w"]],"because":"the honey is dry enough","class":"G","verdict":"keeps","words":"cool and dark, 1 year"},{"all":[["most","moisture",0.19,"19.0 % w/w"]],"because":"honey this moist may ferment, by the yeast in it","class":"G?","verdict":"no published rule decides; go by the words, and look at it","words":"refrigerate, 4 weeks, and watch it"},{"all":[["has","moisture"]],"because":"honey this moist ferments","class":"M","verdict":"does not keep out of the cold","words":"refrigerate, 1 week: it ferments"},{"all":[["most","water-in-oil",0.0,"0.0 mL"]],"because":"nothing but dried plants is in the oil","class":"H","verdict":"keeps","words":"cool and dark, 6 months"},{"all":[["has","water-in-oil"]],"because":"fresh plants in oil shut out the air, and botulism needs no more","class":"I","verdict":"does not keep out of the cold","words":"refrigerate, 4 days, then throw away"},{"all":[["least","covered",0.18,"18.0 %"],["least","abv",0.25,"25.0 % v/v"],["has-not","solids"]],"because":"strong spirit covers all the water","class":"J","verdict":"keeps","words":"cool and dark, 3 years"},{"all":[["most","free-water",0.0,"0.0 mL"],["least","glycerin",0.55,"55.0 % v/v"]],"because":"glycerin leaves no water free","class":"E","verdict":"keeps","words":"cool, 1 year"},{"all":[["most","water-activity",0.85,"0.85"]],"because":"the water is bound","class":"S","verdict":"keeps","words":"a cool shelf, 3 months; cold once opened"},{"all":[["has","abv"],["least","covered",0.18,"18.0 %"]],"because":"spirit covers the free water","class":"A","verdict":"keeps","words":"cool, 6 months; cold once opened"},{"all":[["has","abv"],["least","covered",0.15,"15.0 %"],["acid","",5.0]],"because":"it is sour, and spirit covers the free water","class":"A","verdict":"keeps","words":"cool, 6 months; cold once opened"},{"all":[["least","acidity",0.04,"4.0 % w/v"]],"because":"it is as sour as vinegar","class":"F","verdict":"keeps","words":"cool, 3 months"},{"all":[["least","solids",0.65,"65.0 % w/w"]],"because":"a neutral syrup of this strength keeps itself","class":"A","verdict":"keeps","words":"cool, 6 months; cold once opened"},{"all":[["least","solids",0.6,"60.0 % w/w"]],"because":"it is short of the 65 % that keep a syrup","class":"B","verdict":"does not keep out of the cold","words":"refrigerate, 2 months"},{"all":[["least","solids",0.45,"45.0 % w/w"]],"because":"it is far from the 65 % that keep a syrup","class":"C","verdict":"does not keep out of the cold","words":"refrigerate, 3 weeks"},{"all":[["has","solids"]],"because":"it is a thin syrup: sweetened, not preserved","class":"D","verdict":"does not keep out of the cold","words":"refrigerate, 1 week, or freeze"},{"all":[["has-not","solids"],["has-not","covered"],["has-not","acidity"]],"because":"it is water with plants in it","class":"W","verdict":"does not keep out of the cold","words":"refrigerate, the day after at the latest"},{"all":[],"because":"no published rule decides this mixture","class":"?","verdict":"no published rule decides; go by the words, and look at it","words":"refrigerate, the day after at the latest"}],"many":{"acid-of":[],"acidity":[],"add-costs":[0],"add-energy":[0],"add-times":[0],"add-volumes":[0],"add-weights":[0],"air-pressure":[],"alcohol-by-volume":[],"alcohol-per-dose":[],"alcohol-weight":[],"as-dried":[],"away":[],"boil-off":[],"boiled-down":[0],"boiling":[],"bottles":[],"break-even":[],"by-surface":[],"by-volume":[],"clark":[],"component":[],"contained":[],"cooling-time":[],"cost-each":[],"cost-of-packs":[],"cost-used":[],"cost-used-by-volume":[],"covered":[0],"covers":[],"cowling":[],"days":[],"diluted-to":[],"doses":[],"doses-by-piece":[],"doses-by-weight":[],"dry-solids":[],"energy-of":[],"energy-per-dose":[],"for-each-gram":[],"for-each-gram-by-weight":[],"for-the-body":[],"free-water":[1],"fried":[],"heat-to-warm":[],"held-by-glycerin":[],"held-by-sugar":[0],"hold":[],"hold-back":[1],"holds-ceiling":[],"honey-density":[],"liquid-to-each":[],"lose":[1],"lose-weight":[1],"measure-out":[],"mixed-temperature":[0,1],"moisture":[],"mole-fraction":[],"moles":[],"norrish":[],"of-finished-volume":[],"of-proof":[],"packs":[],"part-of":[2],"parts-of-strong":[],"parts-of-weak":[],"passed":[],"passed-on":[],"pieces":[],"plant-per-day":[],"plant-per-dose":[],"plant-water":[],"pot-test":[],"pure-alcohol":[],"rest":[],"rise":[],"share-by-weight":[],"share-of-ceiling":[],"share-of-energy":[],"share-of-finished":[],"share-of-pieces":[],"share-of-two":[],"share-of-volume":[],"share-of-weight":[],"share-of-whole":[],"solids":[0],"spirit-density":[],"spirit-for":[],"stage-here":[],"strength":[],"strong-of":[],"sucrose-share":[],"sugar-in-honey":[],"taken-together":[0],"takes-up":[],"thin-air":[],"time-on-stove":[],"time-to-lose":[],"volume-of-drops":[],"water-activity":[0],"water-activity-honey":[0],"water-by-rule":[],"water-of":[],"water-to-add":[],"weigh":[],"weigh-by-piece":[],"weight-per-dose":[],"young":[]},"ounce":28.349523125,"rounds":{"bottles":"down","days":"down","doses":"down","minutes":"up","pieces":"down","spirit":"up","stove-minutes":"up","strong-spirit":"up","sweetener":"up","sweetener-weight":"up"},"rungs":[[0.61611519921875,"1/8 tsp"],[1.2322303984375,"1/4 tsp"],[2.464460796875,"1/2 tsp"],[3.6966911953125,"3/4 tsp"],[4.92892159375,"1 tsp"],[7.393382390625,"1 1/2 tsp"],[9.8578431875,"2 tsp"],[14.78676478125,"1 tbsp"],[22.180147171875,"1 1/2 tbsp"],[29.5735295625,"2 tbsp"],[44.36029434375,"3 tbsp"],[59.147059125,"1/4 cup"],[78.86274549999999,"1/3 cup"],[118.29411825,"1/2 cup"],[157.72549099999998,"2/3 cup"],[177.441177375,"3/4 cup"],[236.5882365,"1 cup"],[295.735295625,"1 1/4 cups"],[354.88235475,"1 1/2 cups"],[414.029413875,"1 3/4 cups"],[473.176473,"2 cups"],[532.3235321249999,"2 1/4 cups"],[591.47059125,"2 1/2 cups"],[650.617650375,"2 3/4 cups"],[709.7647095,"3 cups"],[768.9117686249999,"3 1/4 cups"],[828.05882775,"3 1/2 cups"],[887.205886875,"3 3/4 cups"],[946.352946,"1 quart"],[1419.529419,"3 pints"],[1892.705892,"1/2 gallon"],[2365.882365,"5 pints"],[2839.058838,"3 quarts"],[3312.235311,"7 pints"],[3785.411784,"1 gallon"],[5678.117676,"1 1/2 gallons"],[7570.823568,"2 gallons"],[11356.235352,"3 gallons"],[15141.647136,"4 gallons"],[18927.05892,"5 gallons"],[22712.470704,"6 gallons"],[26497.882488,"7 gallons"],[30283.294272,"8 gallons"],[34068.706055999995,"9 gallons"],[37854.11784,"10 gallons"],[41639.529624,"11 gallons"],[45424.941408,"12 gallons"],[49210.353191999995,"13 gallons"],[52995.764976,"14 gallons"],[56781.17676,"15 gallons"],[60566.588544,"16 gallons"],[64352.000327999995,"17 gallons"],[68137.41211199999,"18 gallons"],[71922.823896,"19 gallons"],[75708.23568,"20 gallons"],[79493.647464,"21 gallons"],[83279.059248,"22 gallons"],[87064.471032,"23 gallons"],[90849.882816,"24 gallons"],[94635.2946,"25 gallons"],[98420.70638399999,"26 gallons"],[102206.118168,"27 gallons"],[105991.529952,"28 gallons"],[109776.941736,"29 gallons"],[113562.35352,"30 gallons"],[117347.765304,"31 gallons"],[121133.177088,"32 gallons"],[124918.588872,"33 gallons"],[128704.00065599999,"34 gallons"],[132489.41244,"35 gallons"],[136274.82422399998,"36 gallons"],[140060.236008,"37 gallons"],[143845.647792,"38 gallons"],[147631.059576,"39 gallons"],[151416.47136,"40 gallons"],[155201.883144,"41 gallons"],[158987.294928,"42 gallons"],[162772.70671199998,"43 gallons"],[166558.118496,"44 gallons"],[170343.53028,"45 gallons"],[174128.942064,"46 gallons"],[177914.353848,"47 gallons"],[181699.765632,"48 gallons"],[185485.177416,"49 gallons"],[189270.5892,"50 gallons"]],"trees":{"acid-of":["*",0,1],"acidity":["/",0,1],"add-costs":["sum",0],"add-energy":["sum",0],"add-times":["sum",0],"add-volumes":["sum",0],"add-weights":["sum",0],"air-pressure":["*","101,325 Pa",["^",0,"5.25588"]],"alcohol-by-volume":["/",0,1],"alcohol-per-dose":["/",["*",0,1],2],"alcohol-weight":["*",0,"0.78924 g/mL"],"as-dried":["/",["*",0,["-","1",1]],["-","1",2]],"away":["-",0,1],"boil-off":["*",0,1],"boiled-down":["/",["sum",0],["-","1",1]],"boiling":["-",["/","1,730.63 °C",["-","8.07131",["/",["ln",["/",0,"133.322 Pa"]],"2.302585093"]]],"233.426 °C"],"bottles":["/",0,1],"break-even":["up",["/",0,["-",1,2]]],"by-surface":["/",["*",0,1],"1.73 m²"],"by-volume":["/",["*",0,["look","density of alcohol in water at 20 °C",0]],"0.78924 g/mL"],"clark":["/",["*",0,1],"68.038855500 kg"],"component":["*",0,1],"contained":["*",0,1],"cooling-time":["*",0,["ln",["/",["-",1,3],["-",2,3]]]],"cost-each":["/",0,1],"cost-of-packs":["*",0,1],"cost-used":["*",["/",0,1],2],"cost-used-by-volume":["*",["/",0,1],2],"covered":["if","0.001 mL",1,["/",["sum",0],1],"1"],"covers":["/",["*",0,"1 cm³/mL"],1],"cowling":["/",["*",0,1],"24 years"],"days":["/",0,["*",1,2]],"diluted-to":["/",0,1],"doses":["/",0,1],"doses-by-piece":["/",0,1],"doses-by-weight":["/",0,1],"dry-solids":["*",0,["-","1",1]],"energy-of":["*",0,1],"energy-per-dose":["/",["*",0,1],2],"for-each-gram":["*",0,1],"for-each-gram-by-weight":["*",0,1],"for-the-body":["*",0,1],"free-water":["max","0",["-",0,["sum",1]]],"fried":["/",["*",0,1],"150 months"],"heat-to-warm":["*",["*",0,"0.001 kcal/g °C"],1],"held-by-glycerin":["*","2",0],"held-by-sugar":["*",["sum",0],["+","0.53 mL/g","0.647 mL/g"]],"hold":["*",0,1],"hold-back":["*",0,["sum",1]],"holds-ceiling":["/",0,1],"honey-density":["*",["look","specific gravity of honey at 20 °C",0],1],"liquid-to-each":["/",0,1],"lose":["-",0,["sum",1]],"lose-weight":["-",0,["sum",1]],"measure-out":["/",0,1],"mixed-temperature":["/",["sum",["*",0,1]],["sum",0]],"moisture":["/",0,1],"mole-fraction":["/",0,["+",0,1]],"moles":["/",0,1],"norrish":["*",["-","1",0],["exp",["-","0",["*",["*",1,0],0]]]],"of-finished-volume":["/",["*",0,1],["-","1",1]],"of-proof":["/",0,"200"],"packs":["up",["/",0,1]],"part-of":["/",["*",0,1],["sum",2]],"parts-of-strong":["-",0,1],"parts-of-weak":["-",0,1],"passed":["/",0,1],"passed-on":["*",0,1],"pieces":["/",0,1],"plant-per-day":["*",0,1],"plant-per-dose":["/",["*",0,1],2],"plant-water":["*",0,1],"pot-test":["/",0,1],"pure-alcohol":["*",0,1],"rest":["-",0,1],"rise":["-",1,0],"share-by-weight":["look","alcohol by weight",0],"share-of-ceiling":["/",0,1],"share-of-energy":["*",0,1],"share-of-finished":["/",0,1],"share-of-pieces":["/",0,1],"share-of-two":["/",0,["+",0,1]],"share-of-volume":["*",0,1],"share-of-weight":["*",0,1],"share-of-whole":["/",0,1],"solids":["/",["sum",0],1],"spirit-density":["look","density of alcohol in water at 20 °C",0],"spirit-for":["/",["*",0,1],2],"stage-here":["-",0,["*",1,"0.00328084 °C/m"]],"strength":["/",0,1],"strong-of":["/",["*",0,1],["+",1,2]],"sucrose-share":["/",0,["+",0,1]],"sugar-in-honey":["/",["*",["*",0,1],["-","1",2]],["-","1",3]],"taken-together":["sum",0],"takes-up":["*",0,1],"thin-air":["-","1",["*","0.000022558 /m",0]],"time-on-stove":["/",0,["*",1,2]],"time-to-lose":["/",0,1],"volume-of-drops":["/",0,1],"water-activity":["product",0],"water-activity-honey":["product",0],"water-by-rule":["-",["/",["*",0,1],2],0],"water-of":["*",0,1],"water-to-add":["-",["/",["*",0,1],2],0],"weigh":["*",0,1],"weigh-by-piece":["*",0,1],"weight-per-dose":["/",["*",0,1],2],"young":["/",["*",0,1],["+",1,"12 years"]]},"units":[[["tsp","tsps","teaspoon","teaspoons","us tsp"],"volume",[157725491.0,32000000.0]],[["tbsp","tbsps","tablespoon","tablespoons","tbs","us tbsp"],"volume",[473176473.0,32000000.0]],[["fl oz","floz","fluid ounce","fluid ounces","fl ounce","fl ounces","us fl oz","fluid oz"],"volume",[473176473.0,16000000.0]],[["cup","cups","us cup","us cups"],"volume",[473176473.0,2000000.0]],[["pint","pints","pt","pts","us pint","us pints"],"volume",[473176473.0,1000000.0]],[["quart","quarts","qt","qts","us quart","us quarts"],"volume",[473176473.0,500000.0]],[["gallon","gallons","gal","gals","us gallon","us gallons"],"volume",[473176473.0,125000.0]],[["imp fl oz","imperial fl oz","imperial fluid ounce","imperial fluid ounces"],"volume",[454609.0,16000.0]],[["imp pint","imp pints","imperial pint","imperial pints"],"volume",[454609.0,800.0]],[["imp quart","imp quarts","imperial quart","imperial quarts"],"volume",[454609.0,400.0]],[["imp gallon","imp gallons","imperial gallon","imperial gallons"],"volume",[454609.0,100.0]],[["ml","mls","millilitre","millilitres","milliliter","milliliters"],"volume",[1.0,1.0]],[["cl","centilitre","centilitres","centiliter","centiliters"],"volume",[10.0,1.0]],[["dl","decilitre","decilitres","deciliter","deciliters"],"volume",[100.0,1.0]],[["l","litre","litres","liter","liters"],"volume",[1000.0,1.0]],[["mg","milligram","milligrams"],"mass",[1.0,1000.0]],[["g","gram","grams","gm","gms"],"mass",[1.0,1.0]],[["kg","kgs","kilo","kilos","kilogram","kilograms"],"mass",[1000.0,1.0]],[["oz","ozs","ounce","ounces"],"mass",[45359237.0,1600000.0]],[["oz weight","oz by weight","oz wt","ounce by weight","ounces by weight","wt oz"],"mass",[45359237.0,1600000.0]],[["lb","lbs","pound","pounds"],"mass",[45359237.0,100000.0]],[["grain","grains"],"mass",[6479891.0,100000000.0]],[["s","sec","secs","second","seconds"],"time",[1.0,60.0]],[["min","mins","minute","minutes"],"time",[1.0,1.0]],[["h","hr","hrs","hour","hours"],"time",[60.0,1.0]],[["day","days"],"time",[1440.0,1.0]],[["week","weeks"],"time",[10080.0,1.0]],[["°c","° c","C","celsius","degrees c","degrees celsius","deg c"],"temperature",[1.0,1.0]],[["°f","° f","F","fahrenheit","degrees f","degrees fahrenheit","deg f"],"temperature",[5.0,9.0]],[["m","metre","metres","meter","meters"],"length",[1.0,1.0]],[["ft","foot","feet"],"length",[381.0,1250.0]],[["kcal","kcals","kilocalorie","kilocalories"],"energy",[1.0,1.0]],[["kj","kilojoule","kilojoules"],"energy",[125.0,523.0]],[["drop","drops"],"count",[1.0,1.0]],[["%","per cent","percent"],"%",[1.0,100.0]],[["piece","pieces","lozenge","lozenges","pastille","pastilles"],"count",[1.0,1.0]],[["stick","sticks"],"count",[1.0,1.0]],[["slice","slices"],"count",[1.0,1.0]],[["pod","pods"],"count",[1.0,1.0]],[["clove","cloves"],"count",[1.0,1.0]],[["head","heads"],"count",[1.0,1.0]],[["part","parts"],"count",[1.0,1.0]],[["mm","millimetre","millimetres","millimeter","millimeters"],"length",[1.0,1000.0]],[["cm","centimetre","centimetres","centimeter","centimeters"],"length",[1.0,100.0]],[["inch","inches"],"length",[127.0,5000.0]]]};

  // ---- How numbers are printed (the rule of measure/decimal.rs).

  const TENS = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];
  const NBSP = "\u00a0";
  const scaled = (value, places) => Math.floor(Math.abs(value) * TENS[Math.min(places, 9)] + 0.5);
  const rounded = (value, places) => {
    const size = scaled(value, places) / TENS[Math.min(places, 9)];
    return value < 0 && size > 0 ? -size : size;
  };
  const decimal = (value, places) => {
    if (!Number.isFinite(value)) return "—";
    const after = Math.min(places, 9);
    const size = scaled(value, after);
    const digits = BigInt(Math.min(size, 2 ** 120)).toString().padStart(after + 1, "0");
    const whole = digits.slice(0, digits.length - after).replace(/\B(?=(\d{3})+$)/g, ",");
    return (value < 0 && size > 0 ? "−" : "") + whole + (after ? `.${digits.slice(-after)}` : "");
  };
  const usualPlaces = (value, unit) => {
    const size = Math.abs(value * unit.printed);
    if (unit.kind === "money") return unit.places;
    if (Math.abs(size - Math.round(size)) < 1e-9) return 0;
    const fine = unit.kind === "mass" || unit.kind === "volume" || unit.printed === 100;
    if (size >= 100) return 0;
    if (size >= 10) return Math.min(unit.places, 1);
    if (size < 0.1 && fine) return unit.places + 2;
    return size < 1 && fine ? unit.places + 1 : unit.places;
  };
  const show = (value, unit, places) => decimal(value * unit.printed, places) + (unit.text && NBSP + unit.text);
  const showUsual = (value, unit) => show(value, unit, usualPlaces(value, unit));

  // ---- What a kitchen can measure (measure/kitchen.rs). `toward` is "near", "up" or "down".

  const TINY = 1e-12;
  const allows = (toward, measured, exact) => toward === "near"
    || (toward === "up" ? measured >= exact * (1 - TINY) : measured <= exact * (1 + TINY));
  const steps = (toward, value) => toward === "near" ? Math.floor(value + 0.5)
    : toward === "up" ? Math.ceil(value * (1 - TINY)) : Math.floor(value * (1 + TINY));
  const nearest = (rungs, to) => rungs.reduce((best, rung) =>
    !best || Math.abs(rung[0] - to) < Math.abs(best[0] - to) ? rung : best, null);
  // US spoons, cups and jars: one measure within closeness, else two, else nothing.
  const volumeUs = (ml, close, toward) => {
    if (!Number.isFinite(ml) || ml <= 0) return "";
    const fits = (measured) => allows(toward, measured, ml) && Math.abs(measured - ml) <= close * ml * (1 + TINY);
    const single = nearest(book.rungs.filter(([size]) => fits(size)), ml);
    if (single) return single[1];
    const first = book.rungs.findLast(([size]) => size <= ml);
    if (!first) return "";
    const worth = close / 4 * ml;
    const second = nearest(book.rungs.filter(([size]) =>
      size < first[0] && size >= worth && fits(first[0] + size)), ml - first[0]);
    return second ? `${first[1]} + ${second[1]}` : "";
  };
  const counted = (whole, num, den, unit) =>
    (num === 0 ? `${whole}` : whole === 0 ? `${num}/${den}` : `${whole}${NBSP}${num}/${den}`) + NBSP + unit;
  const massUs = (g, close, toward) => {
    if (!Number.isFinite(g) || g <= 0) return "";
    const ounces = g / book.ounce;
    if (ounces > 1e6) return "";
    const parts = ounces < 16 ? 4 : ounces < 160 ? 2 : 1;
    const found = steps(toward, ounces * parts);
    if (found < 1 || Math.abs(found / parts * book.ounce - g) > close * g * (1 + TINY)) return "";
    const [pounds, over] = [Math.floor(found / (16 * parts)), found % (16 * parts)];
    const [whole, part] = [Math.floor(over / parts), over % parts];
    const text = part === 2 && parts === 4 ? counted(whole, 1, 2, "oz") : counted(whole, part, parts, "oz");
    if (pounds === 0) return text;
    return over === 0 ? `${pounds}${NBSP}lb` : `${pounds}${NBSP}lb ${text}`;
  };
  const flOz = (ml) => decimal(ml / book.fluidOunce, 1).replace(/\.0$/, "") + NBSP + "fl oz";
  const oz = (g) => decimal(g / book.ounce, 1) + NBSP + "oz";
  const minutes = (min) => {
    if (!Number.isFinite(min) || min < 0) return decimal(min, 0);
    if (min > 0 && min < 0.5) return `under 1${NBSP}min`;
    const count = (number, one, many) => decimal(number, 0) + NBSP + (number === 1 ? one : many);
    const all = Math.floor(min + 0.5);
    const [days, hours, rest] = [Math.floor(all / 1440), Math.floor(all / 60), all % 60];
    if (all > 2880) {
      const over = Math.floor(all % 1440 / 60);
      if (over === 0 && rest === 0) {
        return days % 7 === 0 && days >= 14 ? count(days / 7, "week", "weeks") : count(days, "day", "days");
      }
      return `${count(days, "day", "days")} ${minutes(all % 1440)}`;
    }
    if (hours === 0) return count(rest, "min", "min");
    return count(hours, "h", "h") + (rest ? ` ${count(rest, "min", "min")}` : "");
  };
  const temperatureText = (celsius) =>
    `${decimal(celsius, 0)}${NBSP}°C (${decimal(celsius * 1.8 + 32, 0)}${NBSP}°F)`;

  // ---- What a reader writes (measure/read.rs): a number, and a unit where it is not the one beside the blank.

  const VULGAR = {
    "½": 1 / 2, "⅓": 1 / 3, "⅔": 2 / 3, "¼": 1 / 4, "¾": 3 / 4, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
  };
  const NUMBER = /^(?:(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d+))?(?:\s*\/\s*(\d+))?|\.(\d+))?(?:\s*([½⅓⅔¼¾⅛⅜⅝⅞])|\s+(\d+)\s*\/\s*(\d+))?/u;
  // The number a text begins with, and the rest of the text; nothing where it begins with none.
  const number = (text) => {
    const found = NUMBER.exec(text);
    const [all, whole, after, under, only, vulgar, num, den] = found;
    if (!all) return null;
    if (under !== undefined && (after !== undefined || vulgar || num)) return null;
    let value = Number(`${(whole ?? "0").replaceAll(",", "")}.${after ?? only ?? "0"}`);
    if (under !== undefined) value /= Number(under);
    if (vulgar) value += VULGAR[vulgar];
    if (num) value += Number(num) / Number(den);
    return [value, text.slice(all.length).trim()];
  };
  const spelling = (text) => text.replace(/[.()]/g, "").replaceAll("-", " ").replace(/[º˚]/g, "°").replace(/\s+/g, " ").trim();
  // What a text comes to in a line's unit, as { value } or as { fault: KIND, of: TEXT }. `usual` is the unit meant
  // where none is written; none means the line's own.
  const read = (text, unit, usual = "") => {
    const found = number(text.trim());
    if (!found) return { fault: text.trim() ? "no-number" : "empty", of: text.trim() };
    const [value, rest] = found;
    // 1,5 and 1 000 could mean two things.
    if (/^[,\d]/.test(rest)) return { fault: "no-number", of: text.trim() };
    if (!Number.isFinite(value)) return { fault: "no-number", of: text.trim() };
    const name = spelling(rest || usual);
    if (!(value > 0) && !["temperature", "length"].includes(unit.kind)) return { fault: "nothing", of: text.trim() };
    if (value > 1e9) return { fault: "too-much", of: text.trim() };
    if (!name || name === spelling(unit.text)) return { value: value / unit.printed };
    const known = book.units.find(([names]) => names.includes(name) || names.includes(name.toLowerCase()));
    if (!known) return { fault: "unknown-unit", of: rest };
    const [names, kind, [over, under]] = known;
    if (names.includes("oz") && unit.kind === "volume") return { fault: "ounce", of: rest };
    // A share may be written in per cent, and a per cent of whatever basis by the bare sign.
    const share = kind === "%" && (unit.kind === "%" || unit.text.startsWith("%") || !unit.text);
    if (kind !== unit.kind && !share) return { fault: "other-kind", of: text.trim() };
    // In whole numbers, so that 34 fl oz are as many millilitres as an author's are.
    return { value: (names.includes("°f") ? value - 32 : value) * over / under };
  };

  // ---- The lines of a working, evaluated (working/pass.rs).

  // A recipe as its page carries it: lines as [name, unit, kind, ...], with kind g (declared, grows with the batch),
  // r (declared), l (a range the recipe declares), a (assumed), k (of this kitchen), p (published), w (worked).
  // A variation's line that is the recipe's own is told by its place there; what it is worked from goes by name.
  const open = (data) => {
    const line = ([name, unit, kind, ...how]) => {
      const found = { name, unit: data.units[unit], kind };
      if (kind === "w") {
        const [formula, bound] = how;
        const symbols = bound.map((lines) => (Array.isArray(lines) ? lines : [lines]));
        return { ...found, formula, bound: symbols, many: book.many[formula], work: formulas[formula] };
      }
      return kind === "l" || kind === "a" ? { ...found, three: how } : { ...found, value: how[0] };
    };
    const own = data.ways[0].lines.map(line);
    return data.ways.map((way) => ({
      ...way,
      lines: way.lines.map((row) => {
        if (typeof row !== "number") return line(row);
        const here = (at) => way.lines.findIndex((other) => (own[other]?.name ?? other[0]) === own[at].name);
        return own[row].bound ? { ...own[row], bound: own[row].bound.map((lines) => lines.map(here)) } : own[row];
      }),
    }));
  };
  // The value of a worked line from the values of the lines it is bound to.
  const worked = (line, values) => line.work(...line.bound.map((lines, symbol) =>
    line.many.includes(symbol) ? lines.map((at) => values[at]) : values[lines[0]]));
  const evaluate = (way, set) => {
    const values = [];
    way.lines.forEach((line, at) => {
      values.push(set.has(at) ? set.get(at)
        : line.kind === "w" ? worked(line, values) : line.three ? line.three[1] : line.value);
    });
    return values;
  };
  // Low, usual and high of every open assumption crossed; beyond six of them the ends and the usual.
  const range = (way, set) => {
    const values = evaluate(way, set);
    const low = [...values];
    const high = [...values];
    const open = way.lines.flatMap((line, at) => (line.three && !set.has(at) ? [at] : []));
    const ends = open.length <= 6 ? [0, 1, 2] : [0, 2];
    const ways = ends.length ** Math.min(open.length, 12);
    for (let n = 0; n < ways; n += 1) {
      const falls = new Map(set);
      let rest = n;
      for (const at of open) {
        falls.set(at, way.lines[at].three[ends[rest % ends.length]]);
        rest = Math.floor(rest / ends.length);
      }
      evaluate(way, falls).forEach((value, at) => {
        if (!Number.isFinite(value)) return;
        if (value < low[at]) low[at] = value;
        if (value > high[at]) high[at] = value;
      });
    }
    way.lines.forEach((line, at) => {
      const off = line.kind === "w" ? book.accuracy[line.formula] : undefined;
      if (off === undefined) return;
      low[at] -= off;
      high[at] += off;
    });
    return { low, high };
  };
  // The first worked line that comes to less than nothing or to no number; -1 where all can be.
  const impossible = (way, values) => way.lines.findIndex((line, at) =>
    line.kind === "w" && !(values[at] >= -1e-9 && Number.isFinite(values[at])));
  // Every amount that grows with the batch, times `by`; what is set stays set.
  const batch = (way, by, set) => new Map([...set, ...way.lines.flatMap((line, at) =>
    (line.kind === "g" ? [[at, (set.get(at) ?? line.value) * by]] : []))]);
  const leadsTo = (way, from, to) => from === to
    || (way.lines[to].bound ?? []).flat().some((at) => leadsTo(way, from, at));

  // ---- So many decimals that whoever works a line again from the printed figures gets the printed result
  // (working/places.rs).

  const MOST = 8;
  const places = (way, values, set) => {
    const inFull = (value, usual) => {
      for (let n = 0; n <= 5; n += 1) {
        if (Math.abs(rounded(value, n) - value) <= 1e-9 * Math.abs(value)) return n;
      }
      return Math.abs(value) >= 100 ? 0 : usual;
    };
    const found = way.lines.map(({ kind, unit }, at) => ((kind === "w" && !set.has(at)) || unit.kind === "money"
      ? usualPlaces(values[at], unit) : inFull(values[at] * unit.printed, unit.places)));
    const shown = (at, value) => {
      const { printed } = way.lines[at].unit;
      return rounded(value * printed, found[at]) / printed;
    };
    const inputs = (line) => line.bound.flat();
    const again = (line, only) => {
      const printed = [...values];
      for (const at of inputs(line)) {
        if (only === undefined || only === at) printed[at] = shown(at, values[at]);
      }
      return worked(line, printed);
    };
    const recomputes = (at) => shown(at, again(way.lines[at])) === shown(at, values[at]);
    const brink = (at) => {
      let size = Math.abs(values[at] * way.lines[at].unit.printed);
      for (let n = 0; n < found[at]; n += 1) size *= 10;
      return Math.abs(size - Math.floor(size) - 0.5) < 1e-2;
    };
    const worst = (at) => {
      const line = way.lines[at];
      let most = null;
      for (const input of inputs(line)) {
        if (found[input] >= MOST) continue;
        const miss = Math.abs(again(line, input) - values[at]);
        if (miss > 1e-12 * Math.abs(values[at]) && (most === null || miss > most[0])) most = [miss, input];
      }
      return most === null ? null : most[1];
    };
    for (;;) {
      const before = found.join();
      for (let at = way.lines.length - 1; at >= 0; at -= 1) {
        if (set.has(at) || way.lines[at].kind !== "w") continue;
        while (!recomputes(at)) {
          const onTheBrink = brink(at) && found[at] < MOST;
          const more = (onTheBrink ? null : worst(at)) ?? at;
          if (found[more] >= MOST) break;
          found[more] += 1;
        }
      }
      if (found.join() === before) return found;
    }
  };

  // ---- Turned round (working/turned.rs): the amount within both ends for which a line comes to a target.

  const turn = (way, ask, line, target, [least, most]) => {
    const result = (amount) => {
      const values = evaluate(way, ask(amount));
      return impossible(way, values) < 0 ? values[line] : undefined;
    };
    const looks = [];
    for (let look = 0; look < 33; look += 1) {
      const amount = least * pow(most / least, look / 32);
      const found = result(amount);
      if (found !== undefined) looks.push([amount, found]);
    }
    const answers = [];
    let jumped;
    for (let n = 0; n + 1 < looks.length; n += 1) {
      let [[low, atLow], [high, atHigh]] = [looks[n], looks[n + 1]];
      if (atLow < target === atHigh < target) {
        if (atLow === target && !answers.includes(low)) answers.push(low);
        continue;
      }
      for (let halving = 0; halving < 60; halving += 1) {
        const middle = (low + high) / 2;
        const found = result(middle);
        if (found !== undefined && (found < target) === (atLow < target)) low = middle; else high = middle;
      }
      const found = result(high);
      const met = found !== undefined && Math.abs(found - target) <= 1e-9 * greater(Math.abs(target), 1e-9);
      if (met) answers.push(high); else jumped = high;
    }
    if (answers.length === 1) return { amount: answers[0] };
    if (answers.length) return { none: "several" };
    if (jumped !== undefined) return { none: "jumped" };
    const reached = looks.map(([, found]) => found);
    return { none: "reach", low: Math.min(...reached), high: Math.max(...reached) };
  };

  // ---- A line's sum as one line of text (formula/equation.rs): names, or the figures put in.

  const SUM = 0;
  const PRODUCT = 1;
  const WHOLE = 2;
  const within = ([text, binds], needs) => (binds >= needs ? text : `(${text})`);
  const join = (op, left, right) => {
    if (op === "/") return [`${within(left, PRODUCT)} ÷ ${within(right, WHOLE)}`, PRODUCT];
    if (op === "^") return [`${within(left, WHOLE)}^${within(right, WHOLE)}`, WHOLE];
    if (op === "min") return [`the lesser of ${left[0]} and ${right[0]}`, SUM];
    if (op === "max") return [`the greater of ${left[0]} and ${right[0]}`, SUM];
    const binds = op === "*" ? PRODUCT : SUM;
    const sign = { "+": "+", "-": "−", "*": "×" }[op];
    return [`${within(left, binds)} ${sign} ${within(right, op === "-" ? PRODUCT : binds)}`, binds];
  };
  // A tree is a number as printed, a symbol as its place, or [op, ...].
  const equation = (line, atom) => {
    const symbols = (tree) => (typeof tree === "number" ? [tree] : Array.isArray(tree) ? tree.slice(1).flatMap(symbols) : []);
    const count = (tree) => {
      const lengths = symbols(tree).map((symbol) => line.bound[symbol].length);
      return lengths.includes(0) ? 0 : Math.max(0, ...lengths);
    };
    const each = (tree) => Array.from({ length: count(tree) }, (_, n) => piece(tree, n));
    const piece = (tree, n) => {
      if (typeof tree === "string") return [tree, WHOLE];
      if (typeof tree === "number") {
        const lines = line.bound[tree];
        return [atom(lines.length === 1 ? lines[0] : lines[n]), WHOLE];
      }
      const [op, a, b, then, otherwise] = tree;
      if (op === "sum" || op === "product") {
        const [first, ...rest] = each(a);
        if (!first) return [op === "sum" ? "0" : "1", WHOLE];
        return rest.reduce((left, right) => join(op === "sum" ? "+" : "*", left, right), first);
      }
      if (op === "exp") return [`e^(${piece(a, n)[0]})`, WHOLE];
      if (op === "up" || op === "down") return [`(${piece(a, n)[0]}), whole, rounded ${op}`, WHOLE];
      if (op === "ln") return [`ln(${piece(a, n)[0]})`, WHOLE];
      if (op === "look") return [`(${a}, read at ${piece(b, n)[0]})`, WHOLE];
      if (op === "if") {
        return [`${piece(then, n)[0]} if ${piece(a, n)[0]} is less than ${piece(b, n)[0]}, else ${piece(otherwise, n)[0]}`, SUM];
      }
      if (op === "-" && b[0] === "sum") return each(b[1]).reduce((left, right) => join("-", left, right), piece(a, n));
      return join(op, piece(a, n), piece(b, n));
    };
    return piece(book.trees[line.formula], 0)[0];
  };

  // ---- A recipe worked with what a reader set (variation.rs).

  const work = (way, set) => {
    const values = evaluate(way, set);
    const { low, high } = range(way, set);
    // Outside what the equations of water activity were measured on there is no figure for it.
    const known = book.activityKnown.every(([id, most]) => !(id in way.ids) || high[way.ids[id]] <= most);
    const ids = { ...way.ids };
    if (!known) delete ids["water-activity"];
    return { way, set, ids, values, low, high, places: places(way, values, set) };
  };
  const shown = (of, at) => show(of.values[at], of.way.lines[at].unit, of.places[at]);
  const plainly = (of, at) => showUsual(of.values[at], of.way.lines[at].unit);
  const ends = (of, at) => {
    const { unit } = of.way.lines[at];
    const [low, high] = [of.low[at], of.high[at]];
    const after = Math.min(of.places[at], usualPlaces(high, unit));
    const texts = [low, high].map((value) => show(value, unit, after));
    const wide = Math.abs(high - low) > 1e-9 * greater(Math.abs(high), Math.abs(low));
    return wide && texts[0] !== texts[1] ? texts : null;
  };
  const between = (of, at) => {
    const found = ends(of, at);
    return found ? `${found[0].split(NBSP)[0]}\u2060–\u2060${found[1]}` : "";
  };

  // Whether a measured value lies outside what the recipe comes to, however its guesses fall: a slip, as like as not.
  const odd = (of, at, value) => (ends(of, at) && (value < of.low[at] || value > of.high[at]) ? ends(of, at) : null);

  // ---- The other system under a line, and what a kitchen measures (page/show.rs).

  const idOf = (of, at) => Object.keys(of.ids).find((id) => of.ids[id] === at);
  const whole = (count) => Math.floor(count + 1e-9);
  const towards = (of, at) => book.rounds[idOf(of, at)] ?? "near";
  const other = (of, at) => {
    const [value, { unit }] = [of.values[at], of.way.lines[at]];
    const toward = towards(of, at);
    if (unit.kind === "volume" && idOf(of, at) === "sweetener") return volumeUs(value, 0.02, toward) || flOz(value);
    if (unit.kind === "volume" && value >= 1) return flOz(value);
    if (unit.kind === "mass" && value >= 14) return massUs(value, 0.05, toward);
    if (unit.kind === "time" && value >= 60 && unit.printed === 1) return minutes(value);
    if (unit.kind === "temperature") return temperatureText(value);
    if (unit.text === "% w/w") return "by weight";
    return toward === "down" ? `so ${decimal(whole(value), 0)}` : "";
  };
  // A volume as a kitchen with US measures takes it; what must not run short is rounded closely, and up.
  const kitchenVolume = (of, at, keeps) => {
    const toward = keeps ? "up" : towards(of, at);
    return volumeUs(of.values[at], toward === "near" ? 0.05 : 0.02, toward) || flOz(of.values[at]);
  };
  const kitchenWeight = (of, at, keeps) =>
    massUs(of.values[at], keeps ? 0.02 : 0.05, keeps ? "up" : "near") || oz(of.values[at]);

  // ---- Will it keep: the ladder's rows from what binds first (keeping/mod.rs, keeping/ladder.rs).

  const judge = (of, careful = true) => {
    const holds = ([test, id, limit]) => {
      const at = of.ids[id];
      if (test === "acid") return of.way.ph !== null && of.way.ph <= limit;
      if (test === "has-not") return at === undefined;
      if (at === undefined) return false;
      if (test === "least") return (careful ? of.low : of.values)[at] >= limit - 1e-9;
      if (test === "most") return (careful ? of.high : of.values)[at] <= limit + 1e-9;
      return true;
    };
    return book.ladder.find((rung) => rung.all.every(holds)) ?? book.ladder.at(-1);
  };
  const because = (of, rung) => {
    const told = rung.all.flatMap(([test, id, , limit]) => {
      const at = of.ids[id];
      if (at === undefined || !["least", "most", "has"].includes(test)) return [];
      const line = `${of.way.lines[at].name} ${shown(of, at)}`;
      return [test === "has" ? line : `${line} (the limit is ${limit})`];
    });
    return told.length ? `${rung.because}: ${told.join("; ")}` : rung.because;
  };

  // ---- Cautions that hang on a figure (caution/watch.rs).

  const holds = (of, [when, a, b]) => {
    if (when === "at-least") return of.values[a] >= b;
    if (when === "more") return of.values[a] > b;
    if (when === "under") return a.reduce((sum, at) => sum + of.low[at], 0) < b;
    if (when === "over") return of.high[a] > b;
    if (when === "passes") return of.high[a] > of.values[b] * (1 + 1e-9);
    if (when === "unkept") return judge(of).verdict !== "keeps";
    return true;
  };
  const piece = (of, [what, a, b]) => {
    const unit = of.way.lines[a]?.unit;
    if (what === "shown") return shown(of, a);
    if (what === "plain") return plainly(of, a);
    if (what === "times") return showUsual(of.values[a] * of.values[b], unit);
    if (what === "high") return showUsual(of.high[a], unit);
    if (what === "careful-end") return ends(of, a) ? `, ${ends(of, a)[1]} at the careful end` : "";
    if (what === "lasts") {
      return of.values[a] * 1440 > b ? `; what is made here would last ${decimal(Math.floor(of.values[a]), 0)} days` : "";
    }
    return a;
  };
  const cautions = (of) => of.way.watched.filter(([, , when]) => holds(of, when)).map(([rule, id, , says]) => {
    const told = says.map((part) => piece(of, part)).join("");
    const [level, lead, text] = book.cautions[rule];
    return { id, level, lead: lead.replaceAll("{}", told), text: text.replaceAll("{}", told) };
  }).filter((caution, n, all) => all.findIndex((other) => other.id === caution.id) === n);

  globalThis.stillroomReader = {
    open, work, batch, leadsTo, turn, impossible, evaluate, equation, shown, plainly, between, other, kitchenVolume, kitchenWeight, judge, because, cautions, odd, read, showUsual,
    first: book.first,
  };
})();

/**
 * Fragrance allergens that a label must name: Regulation (EC) No 1223/2009, Annex III, as amended by
 * Commission Regulation (EU) 2023/1545 of 26 July 2023 (OJ L 188, 27.7.2023, p. 1). Dated below.
 * Names were read from two test houses' pages on 2023/1545. CAS numbers were read from two public
 * tables of it and the SCCS opinion's list of the first 26, then held against two more transcriptions
 * of the annex (tests/domain/label/annex-iii.ts). All are secondary copies: of the Official Journal's
 * own page only the title, dates and first recitals could be reached, and none of its corrigenda, so
 * hold the list against it before relying on it. Every CAS check digit is tested.
 */
export const allergenList = {
  regulation: 'Reg. (EC) 1223/2009, Annex III, amended by Reg. (EU) 2023/1545',
  published: '2023-07-27',
  /** New products must name the added substances from the day after this one. */
  newProductsUntil: '2026-07-31',
  /** Products already on sale may stay on sale until this day. */
  soldUntil: '2028-07-31',
} as const;

export interface Allergen {
  /** The name that goes on the label. */
  readonly name: string;
  readonly cas: readonly string[];
  /** Other spellings and the plants' own names that mean the same; a trailing * for any words after. */
  readonly also: readonly string[];
  /** The rule that forbids it in the EU, where one does; it may still be in old stock. */
  readonly prohibited: string | undefined;
}

const of = (name: string, cas: string, ...also: readonly string[]): Allergen => ({
  name,
  cas: cas.split(' '),
  also,
  prohibited: undefined,
});

const HICC = 'Reg. (EU) 2017/1410: prohibited in the EU';
const BMHCA = 'Reg. (EU) 2021/1902: prohibited in the EU';

/** The 26 that had to be named before 2023/1545; two of them have since been prohibited. */
const classic: readonly Allergen[] = [
  of('Alpha-Isomethyl Ionone', '127-51-5', 'α-Isomethyl Ionone'),
  of('Amyl Cinnamal', '122-40-7'),
  of('Amylcinnamyl Alcohol', '101-85-9'),
  of('Anise Alcohol', '105-13-5', 'Anisyl Alcohol'),
  of('Benzyl Alcohol', '100-51-6'),
  of('Benzyl Benzoate', '120-51-4'),
  of('Benzyl Cinnamate', '103-41-3'),
  of('Benzyl Salicylate', '118-58-1'),
  {
    ...of('Butylphenyl Methylpropional', '80-54-6'),
    prohibited: BMHCA,
  },
  of('Cinnamal', '104-55-2', 'Cinnamaldehyde'),
  of('Cinnamyl Alcohol', '104-54-1'),
  of('Citral', '5392-40-5 106-26-3 141-27-5', 'Geranial', 'Neral'),
  of('Citronellol', '106-22-9 1117-61-9 7540-51-4 26489-01-0'),
  of('Coumarin', '91-64-5'),
  of('Eugenol', '97-53-0'),
  of('Evernia Furfuracea Extract', '90028-67-4 68648-41-9', 'Evernia Furfuracea*'),
  of('Evernia Prunastri Extract', '90028-68-5 68917-10-2', 'Evernia Prunastri*'),
  of('Farnesol', '4602-84-0'),
  of('Geraniol', '106-24-1'),
  of('Hexyl Cinnamal', '101-86-0'),
  of('Hydroxycitronellal', '107-75-5'),
  {
    ...of('Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde', '31906-04-4 51414-25-6', 'HICC'),
    prohibited: HICC,
  },
  of('Isoeugenol', '97-54-1 5912-86-7 5932-68-3'),
  of('Limonene', '138-86-3 5989-27-5 5989-54-8 7705-14-8', 'd-Limonene', 'l-Limonene'),
  of('Linalool', '78-70-6'),
  of('Methyl 2-Octynoate', '111-12-6', 'Methyl Heptine Carbonate'),
];

/** Single substances that 2023/1545 added. */
const addedSubstances: readonly Allergen[] = [
  of('3-Propylidenephthalide', '17369-59-4'),
  of('6-Methyl Coumarin', '92-48-8'),
  of('Acetyl Cedrene', '32388-55-9'),
  of('Alpha-Terpinene', '99-86-5', 'α-Terpinene'),
  of('Amyl Salicylate', '2050-08-0'),
  of('Anethole', '104-46-1 4180-23-8', 'trans-Anethole'),
  of('Benzaldehyde', '100-52-7'),
  of('Beta-Caryophyllene', '87-44-5', 'β-Caryophyllene'),
  of('Camphor', '76-22-2 21368-68-3 464-48-2 464-49-3'),
  of('Carvone', '99-49-0 2244-16-8 6485-40-1'),
  of('Dimethyl Phenethyl Acetate', '151-05-3'),
  of('Eugenyl Acetate', '93-28-7'),
  of('Geranyl Acetate', '105-87-3'),
  of('Hexadecanolactone', '109-29-5'),
  of('Hexamethylindanopyran', '1222-05-5'),
  of('Isoeugenyl Acetate', '93-29-8'),
  of('Linalyl Acetate', '115-95-7'),
  of('Menthol', '89-78-1 1490-04-6 2216-51-5 15356-60-2', 'l-Menthol'),
  of('Methyl Salicylate', '119-36-8'),
  of('Pinene', '80-56-8 127-91-3 7785-70-8 18172-67-3', 'Alpha-Pinene', 'Beta-Pinene'),
  of(
    'Rose Ketones',
    '43052-87-5 23696-85-7 23726-91-2 23726-92-3 23726-94-5 24720-09-0 57378-68-4 71048-82-3',
    'Alpha-Damascone',
    'Beta-Damascone',
    'Delta-Damascone',
    'Damascenone',
  ),
  of('Salicylaldehyde', '90-02-8'),
  of('Santalol', '11031-45-1 115-71-9 77-42-9', 'Alpha-Santalol', 'Beta-Santalol'),
  of('Sclareol', '515-03-7'),
  of('Terpineol', '8000-41-7 98-55-5 138-87-4 586-81-2', 'Alpha-Terpineol'),
  of('Terpinolene', '586-62-9'),
  of('Tetramethyl Acetyloctahydronaphthalenes', '54464-57-2 54464-59-4 68155-66-8 68155-67-9'),
  of('Trimethylbenzenepropanol', '103694-68-4'),
  of('Trimethylcyclopentenyl Methylisopentenol', '67801-20-1'),
  of('Vanillin', '121-33-5'),
];

/** Oils and extracts that 2023/1545 added; one name stands for each group of plants. */
const addedOils: readonly Allergen[] = [
  of(
    'Cananga Odorata Oil/Extract',
    '83863-30-3 8006-81-3 68606-83-7 93686-30-7',
    'Cananga Odorata*',
  ),
  of('Cedrus Atlantica Oil/Extract', '92201-55-3 8023-85-6', 'Cedrus Atlantica*'),
  of('Cinnamomum Cassia Leaf Oil', '8007-80-5 84961-46-6', 'Cinnamomum Cassia*'),
  of('Cinnamomum Zeylanicum Bark Oil', '8015-91-6 84649-98-9', 'Cinnamomum Zeylanicum*'),
  of(
    'Citrus Aurantium Flower Oil',
    '72968-50-4 8016-38-4',
    'Citrus Aurantium Amara Flower*',
    'Citrus Aurantium Dulcis Flower*',
  ),
  of(
    'Citrus Aurantium Peel Oil',
    // The annex gives 8028-48-6 to the flower's oil too; sweet orange oil is pressed from the peel.
    '68916-04-1 8008-57-9 97766-30-8 8028-48-6',
    'Citrus Aurantium Amara Peel*',
    'Citrus Aurantium Dulcis Peel*',
    'Citrus Sinensis Peel Oil',
  ),
  of(
    'Citrus Aurantium Bergamia Peel Oil',
    '68648-33-9 8007-75-8 85049-52-1 89957-91-5',
    'Citrus Aurantium Bergamia*',
  ),
  of('Citrus Limon Peel Oil', '84929-31-7 8008-56-8', 'Citrus Limon*'),
  of('Eucalyptus Globulus Oil', '97926-40-4 8000-48-4', 'Eucalyptus Globulus*'),
  of('Eugenia Caryophyllus Oil', '8000-34-8 8015-97-2 84961-50-2', 'Eugenia Caryophyllus*'),
  of(
    'Jasmine Oil/Extract',
    '84776-64-7 90045-94-6 8022-96-6 8024-43-9',
    'Jasminum Officinale*',
    'Jasminum Grandiflorum*',
  ),
  of('Juniperus Virginiana Oil', '8000-27-9 85085-41-2', 'Juniperus Virginiana*'),
  of('Laurus Nobilis Leaf Oil', '8002-41-3 8007-48-5 84603-73-6', 'Laurus Nobilis*'),
  of(
    'Lavandula Oil/Extract',
    '84776-65-8 8000-28-0 8022-15-9 90063-37-9 91722-69-9 92623-76-2 93455-96-0 93455-97-1',
    'Lavandula*',
  ),
  of(
    'Lemongrass Oil',
    '8007-02-1 89998-16-3 91844-92-7',
    'Cymbopogon Citratus*',
    'Cymbopogon Flexuosus*',
    'Cymbopogon Schoenanthus*',
  ),
  of('Lippia Citriodora Absolute', '8024-12-2 85116-63-8', 'Lippia Citriodora*'),
  of('Mentha Piperita Oil', '8006-90-4 84082-70-2', 'Mentha Piperita*'),
  of('Mentha Viridis Leaf Oil', '8008-79-5 84696-51-5', 'Mentha Viridis*', 'Mentha Spicata*'),
  of('Myroxylon Pereirae Oil/Extract', '8007-00-9', 'Myroxylon*'),
  of('Narcissus Extract', '90064-26-9 68917-12-4 90064-25-8 90064-27-0', 'Narcissus*'),
  of('Pelargonium Graveolens Flower Oil', '90082-51-2 8000-46-2', 'Pelargonium Graveolens*'),
  of('Pinus Mugo', '90082-72-7', 'Pinus Mugo*'),
  of('Pinus Pumila', '97676-05-6', 'Pinus Pumila*'),
  of('Pogostemon Cablin Oil', '8014-09-3 84238-39-1', 'Pogostemon Cablin*'),
  of(
    'Rose Flower Oil/Extract',
    '8007-01-0 84604-12-6 84604-13-7 84696-47-9 90106-38-0 92347-25-6 93334-48-6',
    'Rosa*',
  ),
  of('Santalum Album Oil', '8006-87-9 84787-70-2', 'Santalum Album*'),
  of('Turpentine', '9005-90-7 8006-64-2 8052-14-0', 'Turpentine*'),
];

export const allergens: readonly Allergen[] = [...classic, ...addedSubstances, ...addedOils];

const MEAN =
  'atlag atlaga ortalama mean average avg av avge mittel ~mittelwert mw durchschnitt moyenne moyen moy gemiddeld gemiddelde gem srednia promedio media medio snit snitt gennemsnit gjennomsnitt medel medelvarde prumer keskiarvo median overall'

const EXTREME =
  'min max mini maxi maks minimum maximum highest lowest hochste hochst niedrigste peak std sd stdev stabw range spread drift limit grenzwert limite allowed'

/**
 * The trade's words for what a log holds, in English, German, French, Dutch, Spanish, Italian, Polish, Czech, Danish,
 * Norwegian, Swedish, Finnish, Portuguese, Hungarian and Turkish, and a few of Japanese. Lower case, no accents. `word*` begins with it, `~word` holds
 * it anywhere (compounds), several words are a phrase, anything else is the whole word.
 */
export const CONCEPTS = {
  zero: 'basistryk* ~セロ流量 zero bl1 bl2 grundtryck* grunntrykk* grundtryk* zeroflow zeros zfp1 zfp2 baseline baselines bias natural ~nulldruck ~nullstrom null* zf zfp zpd dp0 δp0 δp01 δp02 dp01 dp02 p0 p01 p02 nul* basisdruk noll* naturdruck* naturelle naturliche* naturlicher* natuurlijk* static nulovy* nulova* nulove* nulovem* nollapaine* nollavirtaus* nulle nula naturlig* nyugalmi* nulla* sifir* | aramlas nelkul|akis yokken|0 vor|0 nach|0 vorher|0 nachher|0 before|0 after|0 start|0 end|0 avant|0 apres|no flow|fan off|ohne geblase|debit nul|sans ventilateur|pression nulle|flujo cero|flujo nulo|caudal nulo|caudal cero|portata zero|a zero|senza flusso|bez przeplywu|zerowym przeplywie|bez wentylatora|przy zerowym|cisnienie naturalne|nulstrom|uden flow|uten flow|utan flode|noll flode|nollflode|zonder stroming|bij nul|debiet nul|presion cero|flusso zero|portata nulla|flusso nullo|ventilatore spento|zerowy przeplyw|zero przeplyw|cisnienie zerowe|przeplyw zerowy|zerowego przeplywu|fan closed|fan sealed|fan covered|debito nulo|bez ventilatoru|puhallin pois|sin flujo|sin caudal|sem caudal|sem fluxo|sans debit|sans flux|senza portata|ohne volumenstrom|ohne stromung|ohne durchfluss|bez prutoku|ilman virtausta|utan luftflode|uden luftstrom|uten luftstrom|without flow|zonder luchtstroom',
  before:
    '前 before b4 bef davor zacatku pre pretest start initial begin beginning starting first vor vorher vorab anfang anfangs* beginn avant debut initiale voor vooraf przed poczatek poczatkowe antes inicial inizio prima iniziale fore innan start* p01 dp01 δp01 zfp1 bl1 opening pred zacatek pocatek pocatecni ennen alussa alku inicial inicio elott elotte elotti kezdeti kezdetben oncesi oncesinde baslangic baslangicta | δp0 1|dp0 1|p0 1|zero 1|baseline 1',
  after:
    '後 after aft stop danach konci post posttest end ending final finish last nach nachher ende einde apres fin finale na achteraf eind po koniec koncowe despues final* dopo fine efter etter slut slutt p02 dp02 δp02 zfp2 bl2 closing konec koncovy jalkeen lopussa loppu depois depois fim loppuu utana utani vegso sonra sonrasi sonrasinda bitis bitiste | δp0 2|dp0 2|p0 2|zero 2|baseline 2',
  /** What stands where the flow would, with the fan covered. */
  covered:
    'closed covered sealed shut capped blanked off geschlossen abgedeckt verschlossen zu ferme fermee obture obturee afgedekt afgesloten dicht lukket tildaekket stangd tackt zakryty zamkniety tapado cerrado chiuso coperto zakryto letakart lezart lefedett abgedeckt* verschlossen* afgedekt* afgesloten* kapatilmis ortulu',
  fan: 'fan blower geblase* geblaese* ventilator* ventilateur ventilador ventilatore vifte* flakt* blasare blaser wentylator* puhallin puhaltimen blaeser* fani fanin',
  gauge:
    'gauge gauges manometer* mikromanometer* micromanometer* manometr* mikromanometr* manometre micromanometre manometro micromanometro druckmess* druckmessgerat* drukmeter trykmaler* trykkmaler* tryckmatare* transducer painemittari*',
  /** The state of a fan that does not run. */
  stopped:
    'off aus abgeschalt* ausgeschalt* stillstand* abgedichtet* uit uitgeschakeld* slukket avslatt avstangd avslagen eteint arrete arret spento apagado parado wylaczon* zatrzyman* vypnut* zastaven* pois without uden uten utan sem sin sans senza ohne zonder bez ilman kikapcsolt* leallitott* kapali',
  /** A moment after one run and before the other. */
  between:
    'between zwischen dazwischen entre tussen mellan mellem mellom tra miedzy pomiedzy mezi valissa valilla middle mid halfway',
  dep: '減圧 減圧法 depress* despres* depr dep dp- unterdruck* underpressure negative negativ negativer onderdruk* podcisn* depresion* depression* undertryk* undertrykk* undertryck* suction minus podtlak* alipaine* negativa negativo saugend absaugend depressao despressur* subpressao depresszio* vakuum* vakum* negatif emme* elszivas* sottopression* | blowing out|blow out|blows out|blown out|under pressure|u druck|vacuum',
  pres: '加圧 加圧法 pressuri* pressuriz* press pres overpressure positive positiv positiver uberdruck* ueberdruck* overdruk* nadcisn* sobrepresion* presurizacion* sovrapress* pressurizzazione overtryk* overtrykk* overtryck* surpress* plus pretlak* ylipaine* positiva positivo druckend einblasend sobrepressao pressurizac* presurizac* tulnyomas* pozitif basinclandirma* ufleme* befuvas* sovrappression* | blowing in|blow in|blows in|blown in|over pressure',
  pressure:
    'pressure pressures press dp δp deltap dpa delta p pa pascal pascals pdiff ~druck ~druckdifferenz ~differenzdruck pression pressions ~druk drukverschil cisnienie cisnienia roznica presion presiones pressione pressioni tryk trykk tryck tryckskillnad trykforskel trykkforskjell difference differenz tlak tlakovy tlakova tlaku rozdil paine paine* paineero pressao diferenca tlakova nyomas nyomasa nyomaskulonbseg nyomaskulonbsege basinc basinci basinclar ~tryckdifferens ~byggnadstryck ~trykdifferens ~trykkdifferanse ~trykkdifferens trykkdiff trykdiff tryckdiff trycken trykkene trykkerne trykket tryckene pressoes drukken tlaky | δ p|pressure diff',
  building:
    'building bldg house geb envelope env room dwelling enclosure structure indoor measured actual act ist istwert gebaude* gebaeude* hull* batiment enveloppe gebouw* woning budynku budynek edificio vivienda bygning* byggnad* hus involucro envolvente klimaskal* klimaskaerm* dom domu mesuree mesure gemeten zmierzone medida misurata maalt matt uppmatt huis budovy budova rakennus vaipan epulet epuletnyomas bina',
  device:
    'fan device nozzle orifice ring blower flowmeter messblende* geblase* geblaese* ventilator* ventilatordruk ventilateur ventilador ventilatore blende* blenden* diaphragme diaphragm boquilla blaser* vifte* flakt* blasare wentylator* dysza dyse duse dusen ~duse tryska ugello tobera suutin mondstuk* ventilatoru puhallin puhaltimen blaeser* | flow pressure|flow pa',
  flow: 'flow flows airflow airflows q qm qr qv vr qfan qmeas qmeasured qleak cfm lps cmh ~volumenstrom ~volumenstrome ~luftstrom ~leckagestrom ~leckstrom debit debits debiet luchtdebiet luchtstroom luchtvolumestroom przeplyw strumien caudal caudales flujo portata flusso luftmangd flode* ~flode luftmenge* virtaama* wydatek luftflode luftmengde luftstrom* volumenstrom* volumstrom* lekdebiet lekstroom lackage leakage volumeflow prutok prutoku objemovy tok vzduchu ilmavirta ilmavirta* vuotoilmavirta vuotoilma caudal vazao fluxo stromning stromung stroming legaram* terfogataram* legszallitas* legmennyiseg* debi debisi debiler akis akisi volumestroom ~volumestroom | air flow|air leakage|volume flow|vol flow|flow rate',
  volume:
    'volume vol vol. volumen ~volumen kubatura objetosc kubatur inhoud volym cubage ~luftvolumen ~innenvolumen rumfang v vi objem objemu tilavuus sisatilavuus ilmatilavuus volumes terfogat terfogata legterfogat legterfogata hacim hacmi ~volym ~volum | air volume|internal volume|cubic content',
  gross:
    'gross external brutto brut bruto ~brutto overall lordo lorda zewnetrzna buitenwerks bta outer externe exterieur exterieures hruby hruba hrube | external dims|outside dims|external dimensions|outside dimensions',
  net: 'net netto ~netto internal inner interior nett innen* heated conditioned interieur interne neto netta interna wewnetrzna kubatura inwendig total totale intern luftvolumen air heated* beheiz* chauffe verwarmd ogrzewana vnitrni cisty netto sisa* belso',
  asShown:
    'measured meas actual act raw reading shown display displayed indicated ist gemessen abgelesen angezeigt anzeige mesure mesuree lu affiche gemeten afgelezen zmierzony zmierzone odczyt medido medida leido misurato misurata letto malt maalt uppmatt avlast mereno namereno mitattu | as read|as shown',
  room: 'room rooms zone zones space spaces raum raume zimmer piece pieces kamer pokoj habitacion stanza rum rom',
  envelope:
    'envelope enclosure env ae shell surface fabric perimeter ~hullflache ~huellflaeche ~hullflachen enveloppe parois deperditive schiloppervlak* gebouwschil verliesoppervlak* schil przegrod przegrody powloki obudowy envolvente envolvente* involucro disperdente klimaskal* omslutande omslutning* omslutningsarea omslutningsareal omhylling* klimaskarm* klimaskaerm* omsluttende at atb atbat obalky obalka vaippa vaipan klimatskarm* klimaskall* vaippa* burkolo* hatarolo* kabugu omhullend* ~umfassungsflache klimatskal* klimaskjerm* | air barrier',
  floor:
    'floor tfa gfa gia gifa nia nifa gfia ufa af afl ~grundflache ~wohnflache ~nutzflache ~bodenflache ~geschossflache ebf ~energiebezugsflache plancher sol habitable shab vloeroppervlak* vloer gebruiksoppervlak* podlogi uzytkowa suelo util pavimento calpestabile gulv* golv* bra boa etageareal atemp a-temp podlahova utile lattia* lattia-ala huoneistoala uteis pavimentada alapterulet* zemin taban bruksareal',
  area: 'area areas ~flache ~flaeche surface oppervlak* oppervlakte powierzchnia superficie areal ytan yta plocha plochy pinta-ala pintaala felulet felulete alapterulet alapterulete alani',
  height:
    'height ht ~hohe ~hoehe hauteur hoogte wysokosc altura altezza hojde hoyde hojd ridge eaves magassag magassaga yukseklik yuksekligi',
  altitude: 'altitude elevation seehohe asl rakim tengerszint* | above sea level|uber nn|u nn|hohe uber',
  temperature:
    'indetemp udetemp ~温度 室温 ~外気温 temp tbinnen tinnen tinne tinde tinterna tinterieur tbuiten taussen tute tude testerna texterieur temps temperature temperatures t θ ϑ θi θe ϑi ϑe ti te ta to tin tout text tint ~temperatur ~temperaturen temperatuur temperatura temperatury lufttemperatur thermometer teplota teploty teplot lampotila lampotila* ~lampotila ~homerseklet hom sicaklik sicakligi ~temperatuur t°',
  inside:
    'indetemp ~室内 室温 in tbinnen tinnen tinne tinde tinterna tinterieur inside indoor θi ϑi ~inomhus indendors innendors indoors internal int interior i innen* ~innen raum* interieur interieure intern binnen binnentemp* binnentemperatuur wewn* wewnatrz wewnetrzna inn interna interno interior inde indvendig inne innvendig ti tin tint tinn indetemperatur innetemp* room vnitrni vnitrniho vnitrku interieru sisa* sisalla sisalampotila interior uvnitr belso belteri ic',
  outside:
    'udetemp ~外気 ~屋外 externa externo tbuiten taussen tute tude testerna texterieur θe ϑe out outside outdoor ~utomhus utendors outdoors auss external ext exterior o e ude aussen* ~aussen exterieur exterieure extern externe buiten buitentemp* buitentemperatuur zewn* zewnatrz zewnetrzna esterna esterno exterior ute utvendig udvendig udendors utomhus te ta to tout text tex ambient udetemperatur utetemp* venkovni venkovniho vnejsi vnejsiho exterieru ulko* ulkona ulkolampotila venku zewnatrz kulso kulteri dis | t est',
  barometer:
    'baro ~barometer barometric barometrisch* atmospheric atmos ~luftdruck ~barometerstand barometrique atmospherique luchtdruk barometrisk barometrico barometrica atmosferico atmosferica barometryczne atmosferyczne lufttryck lufttryk lufttrykk pbar patm pb qfe qnh barometre barometro barometricky barometrickeho atmosfericky ilmanpaine barometrica atmosferica legnyomas* legkori* barometrik atmosferik ~atmosfartryck ~atmosfarstryck ~atmosfaeretryk ~atmospharendruck ~aussenluftdruck atmosferische atmospharischer atmosfarisk atmosfaerisk atmosferyczna | hava basinci|atmosfer basinci|air pressure|p baro|p atm|pression de l air|p bar|atm pressure|ambient pressure|station pressure',
  /** Air pressure as a weather service states it, worked out for sea level. */
  seaLevel:
    'qnh qff msl mslp nhn reduziert* reduced reduit reduite gereduceerd zredukowan* reducid* ridott* redukovan* redusert reducerat | sea level|uber nn|auf nn|niveau de la mer|niveau mer|zeeniveau|livello del mare|nivel del mar|poziomu morza|poziom morza|hladinu more|meren pinta',
  humidity:
    'rh humidity hum feuchte ~feuchte ~feuchtigkeit humidite vochtigheid wilgotnosc humedad umidita fugt* fuktighet fukt hr rf rv paratartalom* nemi | bagil nem|rel hum',
  wind: 'wind windspeed ~windgeschwindigkeit ~windstarke vent windsnelheid wiatr wiatru viento vento vind vindhastighet vindstyrke beaufort bft szel szelsebesseg ruzgar* vindhastighed vindhast* vindhastigh* velocidadviento',
  date: 'date datum dato data fecha jour dzien dat prufdatum messdatum testdatum pruefdatum tested datum dne paivamaara pvm data napja tarih tarihi meetdatum matdatum provdatum maledato provedato meetdag ~datum ~dato | date of test|test date',
  name: 'house home immeuble prufling prufobjekt warehouse hall halle school shop factory nursery church barn bungalow cottage residence residencia villa chantier cantiere affaire opera nazev objet projectnaam projektnaam objectnaam nazwa zone bezeichnung farmhouse lot building dwelling development project plot property flat apartment wohnung nutzungseinheit appartement lejlighed leilighet lagenhet bolig mieszkanie lokal piso appartamento asunto byt apartamento site name unit object job gebaude ~objekt projekt bauvorhaben wohneinheit haus bv batiment chantier projet ouvrage logement maison gebouw project woning budynek obiekt inwestycja edificio obra proyecto vivienda progetto edificio immobile bygning byggeri ejendom prosjekt bygg byggnad fastighet objekt sted operation operacion plads lieu premises address adresse anschrift adres adresa direccion indirizzo adress location ort street strasse rue liegenschaft sag budova budovy stavba rakennus kohde imovel moradia fracao eiendom kiinteisto kohteen epulet helyszin haz lakas proje yapi bina konut daire bouwnummer huisnummer kavelnummer unita | building name|site address|street address',
  address:
    'address adresse anschrift adres direccion indirizzo adress location street standort ort liegenschaft postcode adresa osoite morada endereco cim cime helyszin',
  client:
    'client customer auftraggeber bauherr kunde opdrachtgever klant klient zleceniodawca cliente committente kunde bestallare bygherre oppdragsgiver objednatel investor tilaaja megrendelo epitteto musteri isveren | maitre d ouvrage|donneur d ordre',
  tester:
    'tester technician operator engineer prufer pruefer messtechniker bearbeiter operateur testeur mesureur meetspecialist technicus badajacy wykonal tecnico operatore operador inspector proveleder maler tekniker testare by geprueft gepruft zkousel meril mittaaja vizsgalo merest teknisyen meettechnicus provare meettechnicus prufingenieur mesureuse | tested by|carried out by|done by|durchgefuhrt von|uitgevoerd door|utford av|udfort af|utfort av|realizado por|eseguito da|efectuado por|effettuato da|realise par|effectue par|gemessen von|gemeten door|malt av|malt af|pomiar wykonal',
  testId:
    'test job ref report protocol protokoll prufnummer messung bericht nummer auftrag dossier essai pruef* pruf* proef zlecenie nr prova prueba ensayo prov sag test* zkouska zkousky mittaus | test no|test id|test ref|job no|job ref|report no',
  method: 'method standard norm norme norma metode metod methode szabvany yontem',
  stage: 'stage phase bauphase fase etap',
  notes:
    'notes note remarks remark comments comment bemerkung bemerkungen anmerkung anmerkungen remarque remarques observations opmerking opmerkingen uwagi observaciones notas osservazioni noter merknad anmarkning kommentar megjegyzes megjegyzesek notlar aciklama bemaerkning* merknader merknad* observacoes observacao anmarkningar opmerking*',
  target:
    'druckstufe* drukstap target targets ziel zielwert* zieldruck design nominal setpoint planned plan soll sollwert sollwerte solldruck cible consigne visee doel streef* streefwaarde gewenst zadane docelowe objetivo obiettivo nominale mal malvarde malverdi* maltryk* maltryck* settpunkt aim wanted desired intended approx goal pozadovany tavoite cil cilovy objectif objetivos | set point|set value|set pa',
  /** What a result must not exceed. */
  limit:
    'limit limits limite limites limiet limiti limita limity grense grensen grans gransvarde graense graensevaerdi grenzwert* maxwert anforderung* zulassig* required requirement* allowable allowed permitted design must eis eisen exigence* requis* admissible* admisible* krav kravet kravene wymagan* wymog* requisit* pozadavek vaatimus* sallittu maxi maximaal toegestaan specification exigencia* specified spec maks | not more than|at most',
  corrected:
    'bereinigt* corrected corr korr korrigiert* korr* corrige corrigee corrige* gecorrigeerd* skorygowan* corregid* corretto corretta korrigeret korrigerad korrigert std standard stp norm normal* normiert* referenz* normvolumen* normluft* nm3 sm3 scfm adj adjusted reference qn qenv qcor qcorr qc korigovan* opraven* korjattu corrigid* korrigerede korrigerte korrigerade korrigeret* corrett*',
  induced:
    'bereinigt* induced net netto induziert* induite induit corrected corr korr* korrigiert* corrige corrigee effective effektiv* geinduceerd* gecorrigeerd* skorygowan* inducid* indotta adjusted induceret indusert korigovan* opraven* korjattu corrigid* corregid* corretta corretto corrige* skygerowan* gecorrigeerd korrigeret korrigerat',
  speed:
    'speed rpm hz drehzahl vitesse toerental obroty velocidad velocita hastighed varvtal voltage volt ampere power leistung stufe',
  time: 'time clock elapsed zeit uhrzeit messzeit temps heure tijd czas hora ora tid tidspunkt timestamp zeitstempel',
  index:
    'no nr nro ponto piste pisteet bod cislo # step reading point pt pts stage station lp messpunkt punkt stufe num number index etape palier punt meetpunt punkt lp. pomiar punto paso passo trin steg trinn stap id row sample messung poradi sorszam ssz lepes meres sira adim',
  direction:
    'direction dir mode richtung messrichtung sens richting kierunek direccion direzione retning riktning run type art messart modus kind smer suunta direcao',
  range:
    'diaphragme* diaframma diafragma blendenring kryza kryzy clona clony clonu range ranges plate plates ring rings configuration config bereich messbereich blende blenden plage gamme opening disc disk cover bague plaque anneau plaat zakres plyta anillo anello boquilla nozzle nozzles dyse duse dusen tryska ugello tobera suutin mondstuk* buse insert adapter orifice rango anel aneis diafragmas orificio blandare bereik | flow ring',
  role: 'type role what kind art typ was quoi status state remark remarks note notes comment label phase bemerkung',
  total:
    'total tot sum gesamt ~gesamt summe combined totale totaal suma totalt samlet somme sigma both all together overall',
  /** What sums a list up. */
  average: `${MEAN} ${EXTREME} total sum summe st`,
  mean: MEAN,
  extreme: EXTREME,
  /** Values of one sign only, as a standard asks for their mean beside that of all. */
  signed: 'plus minus pos neg positiv* negativ*',
  coefficient: 'c k coefficient coeff cf koeffizient konstante coef const constant a c0 faktor',
  exponent: 'n exponent exp m b hochzahl exposant power',
  test: 'test retest job house plot prufung messung essai proef test* houses dwelling auftrag objekt haus flat flats apartment apartments unit building site property home wohnung wohneinheit nutzungseinheit gebaude logement appartement appartements batiment maison woning gebouw huis lejlighed leilighet lagenhet bolig hus bygning mieszkanie lokal budynek piso vivienda appartamento edificio casa asunto byt dum apartamento fracao zkouska mittaus prova prueba ensayo ensaio badanie',
  uncertainty:
    'uncertainty accuracy tolerance error unsicherheit genauigkeit messunsicherheit toleranz incertitude precision exactitude onzekerheid nauwkeurigheid niepewnosc dokladnosc incertidumbre exactitud incertezza accuratezza usikkerhed usikkerhet osakerhet nojaktighet nejistota presnost epavarmuus incerteza ~unsicherheit',
  lower: 'min minimum from lowest low von lower',
  upper: 'max maximum to highest high bis upper',
  used: 'used use valid include included counts count gultig gueltig verwendet valide retenu utilise geldig gebruikt wazny uzyty usato usado brugt brukt anvand platny',
  /** Sheets that show how the form is filled in. */
  example:
    'example sample template beispiel muster vorlage exemple modele voorbeeld sjabloon esempio modello ejemplo plantilla exemplo modelo eksempel mal exempel mall esimerkki malli przyklad szablon priklad vzor sablona',
  /** A test that came to no end; one that a house failed did. */
  brokenOff:
    'stopped abandoned aborted interrupted incomplete abgebrochen unterbrochen unvollstandig interrompu interrompue incomplet afgebroken onvolledig przerwan* interrumpid* interrott* avbrutt avbruten afbrudt keskeyt* prerusen* interrompid*',
  /** A test of an earlier year, kept beside that of today for comparison. */
  former:
    'vorjahr vorjahres* fjolarets fjor | previous test|previous tests|previously tested|last test|last tested|earlier test|prior test|previous visit|last visit|earlier visit|previous measurement|letzte messung|letzter test|vorige messung|vorherige messung|fruhere messung|essai precedent|mesure precedente|dernier essai|derniere mesure|vorige meting|laatste meting|prova precedente|ensayo anterior|tidligere maling|forrige maling|foregaende matning|last year|last years|previous year|year before|letztes jahr|letzten jahres|an dernier|annee derniere|annee precedente|vorig jaar|afgelopen jaar|forra aret|sidste ar|i fjor|zeszly rok|ubiegly rok|rok temu|ano pasado|ano anterior|anno scorso|anno precedente|lonsky rok|minuly rok|viime vuosi|viime vuoden',
  subtracted:
    'bereinigt* subtracted deducted removed abgezogen abgez subtrahiert herausgerechnet soustraite soustrait soustraites deduite deduit deduites retranche retranchee restada restado descontada descontado sottratta sottratto detratta detratto odjete odjeto odjety afgetrokken fratrukket fratrukne fraregnet fradraget avdragen avdraget odecten odectena vahennetty | taken off|netted off|net of|already corrected|already allowed|bereits korrigiert|bereits berucksichtigt|deja corrige|deja corrigee|al verrekend|ya corregida|gia corretta',
  /** Figures worked out from readings. */
  evaluated:
    'auswertung ergebnis* result results regression* ausgleich* referenzdruck* reference curve fit fitted calculated resultat* resultado* risultat* wyniki vysledky uitkomst* uitslag* tulokset evaluation',
  /** A value of its own that was not read: "interpolated at 50 Pa". */
  workedOut:
    'interpol* extrapol* berechnet* errechnet* gerechnet* calcule calculee calcules calculees calculated computed berekend* calcolat* calculad* obliczon* wyliczon* vypocten* vypocitan* beregnet* beraknad* laskettu predicted',
  /** What else is measured in a house with pressures and flows: ducts, air terminals. */
  otherSystem:
    'duct ducts ductwork ahu balancing ~luftkanal ~luftkanale ~luftleitung ~luftungsanlage ~einregulierung vmc bouches aeraulique aerauliques conduits gaines luchtkanaal luchtkanalen ventielen canalizzazioni condotte bocchette bocas rejillas kanalow przewodow potrubi vzduchotechnika ventilationskanaler ventilasjonskanaler imukanava kanavisto | ventilation system|air terminals|supply and extract',
  /** A reading that was taken once more. */
  repeated:
    'superseded replaced ersetzt remplacee remplace vervangen | repeated below|repeated next|repeated later|repeated after|repeated at end|taken again|done again|measured again|read again|see repeat|see below|unten wiederholt|spater wiederholt|wird wiederholt|refait plus bas|refaite plus bas|mesure refaite|hieronder herhaald|opnieuw gemeten|powtorzono ponizej|repetida abajo|repetida abaixo|ripetuta sotto|gentaget nedenfor|gjentatt nedenfor|upprepad nedan',
  /** A value that its keeper does not believe. */
  wrong:
    'wrong incorrect mistake falsch* fehler* stimmt faux fausse errone* erreur fout foute onjuist incorrecto incorrecta erroneo erronea sbagliato sbagliata errato errata errado errada bledn* blad zle chybn* spatne forkert fejl feil fel felaktig* vaara virhe* | not right|not correct|to be checked|please check|use instead|nicht richtig|bitte prufen',
  /** A run that was begun again. */
  restarted:
    'restart* neustart* neubeginn* recommenc* repris reprise herstart* reinici* ricomincia* omstart* uudelleen* wznow* restartovan* recomec* | started again|start again|starting again|began again|begun again|started over|start over|from the start|redone from here|neu begonnen|neu gestartet|von vorn|opnieuw begonnen|opnieuw gestart|startet forfra|startet pa nytt|borjade om|od nowa|od poczatku|znovu od zacatku|desde el principio|da capo',
  leftOut:
    'rejected reject ignore ignored discard discarded omit omitted void invalid excluded exclude unused aborted verworfen ungultig ungueltig annule rejete ongeldig vervallen odrzucony descartado scartato kasseret forkastet forkastad bad vyrazen* vyloucen* neplatn* hylatty hylat* rejeitad* anulad* afgekeurd* forkast* kasser* odrzucon* descartad* scartat* rejeit* rejete rejetee verworfen* unusable | not used|not valid|do not use|nicht verwendet|left out|non utilise|non retenu|niet gebruikt|niet gebruiken|niet meenemen|anvands ej|anvands inte|ej anvand|ikke brugt|ikke brukt|ikke medtaget|ikke bruk|nie brac|nie uwzgledniac|pominac|no usar|no usado|no utilizar|no utilizado|non usare|non usato|non utilizzare|non utilizzato|nao usar|nao usado|nao utilizar|a ignorer|ne pas utiliser|ne pas retenir|nicht verwenden|nicht werten|nicht gewertet|da scartare|a descartar',
} as const

export type Concept = keyof typeof CONCEPTS

using System.CommandLine;
using Contam.Jobs.Documents;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary><c>contam job backup</c> and <c>restore</c>: the whole shop as a file to keep elsewhere, and the way back from it.</summary>
internal sealed class CopyShop(JobShop shop)
{
    private readonly Argument<string> made = new("FILE") { Description = "the file to make; nothing may be there" };
    private readonly Argument<string> kept = new("FILE") { Description = "a file that job backup made" };

    public IEnumerable<Command> Build()
    {
        Command backup = shop.Command(
            "backup",
            """
            Copies the whole shop, with every job, into a new file, while others go on working. What arrived is read again and checked. The copy is a shop
            file: every command reads it with --shop. Keep it on another disk. Ends with 1 where something in the shop is not as it was written.

            Example:
              contam job backup shop-monday.db
            """,
            call =>
            {
                string file = call.GetValue(made)!;
                return shop.Use(call, book => shop.Tell(ShopCopy.Backup(book, file), $"{file} holds all of {book.Place}"), ShopUse.Read);
            });
        backup.Arguments.Add(made);
        yield return backup;

        Command restore = shop.Command(
            "restore",
            """
            Makes a shop from a copy: in a file that is not there yet, or in a database without jobs. The copy stays as it is. What arrived is read again and
            checked. Ends with 1 where something in it is not as it was written.

            Example:
              contam job restore shop-monday.db --shop postgres://shop@server/newshop
            """,
            call =>
            {
                string file = call.GetValue(kept)!;
                string place = shop.PlaceOf(call);
                return shop.Tell(ShopCopy.Restore(file, place), $"{ShopWords.WithoutPassword(place)} holds all of {file}");
            });
        restore.Arguments.Add(kept);
        yield return restore;
    }
}
